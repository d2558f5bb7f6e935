/** The first line of a report log, checked. */
import { z } from 'zod';
import { domainSchema } from '../pad/stick.ts';
import { readSchema } from '../read-schema.ts';
import { failed, type Result } from '../result.ts';
import type { LogHeader } from './header.ts';
import { parseJson } from './parse-json.ts';

const LOG_KIND = 'stickwright-report-log';

const id16 = z.number().int().min(0).max(0xffff);

/** `program`, `stage`, `domain` and the pad's `unit` may be missing: then null, null, `reported`, null. Keys that are not known are left out. */
const headerSchema = z.object({
  kind: z.literal(LOG_KIND),
  version: z.literal(1),
  program: z.string().nullable().default(null),
  startedAt: z.string(),
  stage: z.enum(['received', 'fitted', 'calibrated', 'recheck']).nullable().default(null),
  domain: domainSchema.default('reported'),
  pad: z.object({
    vendorId: id16,
    productId: id16,
    product: z.string(),
    serial: z.string().nullable(),
    transport: z.enum(['usb', 'bluetooth', 'simulated']),
    unit: z.string().nullable().default(null),
  }),
  descriptor: z.string().nullable(),
  profile: z.string().nullable(),
  endMark: z.boolean().exactOptional(),
});

const NO_HEADER = 'its first line is no header of one.';

/** Refuses other kinds of file, other versions, and whatever is missing or of the wrong type, by name. */
export function parseHeader(line: string): Result<LogHeader> {
  const read = parseJson(line);
  if (!read.ok)
    return failed(
      'log-not-a-log',
      notALog(read.problem.code === 'json-not-a-number' ? read.problem.says : NO_HEADER),
      1,
    );
  const value = read.value;
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return failed('log-not-a-log', notALog(NO_HEADER), 1);
  const { kind, version } = value as { readonly kind?: unknown; readonly version?: unknown };
  if (typeof kind === 'string' && kind !== LOG_KIND)
    return failed('log-other-kind', `This is a file of kind "${kind}", not a report log; give a .padlog file.`, 1);
  if (typeof version === 'number' && version !== 1 && kind === LOG_KIND)
    return failed(
      'log-other-version',
      `This report log has version ${version} and only version 1 can be read; use the program version that wrote it.`,
      1,
    );
  const header = readSchema(headerSchema, value, 'log-header', 'The header of the report log');
  return header.ok ? header : failed(header.problem.code, header.problem.says, 1);
}

function notALog(why: string): string {
  return `This is not a report log: ${why} Give a .padlog file.`;
}
