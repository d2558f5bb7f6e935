/** Measures that are kept beside a log, so that they are worked out once. */
import { stat } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { stickIdSchema } from '../../../shared/schemas.ts';
import { readJson, writeWhole } from '../../store/atomic-file.ts';
import { measuredSchema, type Measured } from '../measure/measured.ts';
import { MEASURED_FILE } from './survey-file.ts';

/** What measures were worked out with; another version, another state of the log or other terms give others. */
const madeWithSchema = z.object({
  program: z.string(),
  log: z.string(),
  limits: z.string(),
  /** Empty where nothing was known of them, and in a file of when nothing could be. */
  gates: z.string().default(''),
});
export type MadeWith = z.infer<typeof madeWithSchema>;

const keptSchema = madeWithSchema.extend({ measured: measuredSchema });

/** What no version and no terms change. */
const heldSchema = z.object({
  log: z.string(),
  measured: z.object({
    report: z.object({
      sticks: z.partialRecord(
        stickIdSchema,
        z.object({ rest: z.object({ releases: z.number() }).nullable(), rim: z.looseObject({}).nullable() }),
      ),
    }),
  }),
});

/** Null where none are kept that were made so. */
export async function readMeasures(folder: string, made: MadeWith): Promise<Measured | null> {
  const read = await readJson(path.join(folder, MEASURED_FILE), keptSchema, new Date());
  if (read.kind !== 'read') return null;
  const { program, log, limits, gates, measured } = read.value;
  const isSame = program === made.program && log === made.log && limits === made.limits && gates === made.gates;
  return isSame ? measured : null;
}

/** Where the disk is full nothing is kept, which costs the next look a second's work and nothing else. */
export async function keepMeasures(folder: string, made: MadeWith, measured: Measured): Promise<void> {
  await writeWhole(path.join(folder, MEASURED_FILE), JSON.stringify({ ...made, measured }));
}

/** The sticks of which a log in this state holds a rest and a rim; null where no measures of it are kept. */
export async function sticksWithGate(folder: string, log: string): Promise<readonly StickId[] | null> {
  const read = await readJson(path.join(folder, MEASURED_FILE), heldSchema, new Date());
  return read.kind === 'read' && read.value.log === log ? gatesIn(read.value.measured) : null;
}

/** The sticks of which measures hold a rest and a rim. */
export function gatesIn({ report: { sticks } }: z.infer<typeof heldSchema>['measured']): readonly StickId[] {
  return STICKS.filter((stick) => {
    const { rest = null, rim = null } = sticks[stick] ?? {};
    return rest !== null && rest.releases > 0 && rim !== null;
  });
}

/** A log that grew or was replaced is in another state. */
export async function logState(log: string): Promise<string> {
  const { size, mtimeMs } = await stat(log);
  return `${String(size)}-${String(Math.round(mtimeMs))}`;
}
