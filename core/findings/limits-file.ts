/** A limits file: `{"limits":{"offCentre":0.05,…}}`, values by the limit's id; a `kind` of its own is not needed. */
import { z } from 'zod';
import { readSchema } from '../read-schema.ts';
import { done, failed, type Result } from '../result.ts';
import { refuseLimit } from './set-limits.ts';

const fileSchema = z.object({
  kind: z.literal('stickwright-limits').optional(),
  version: z.literal(1).optional(),
  limits: z.record(z.string(), z.unknown()),
});

/** Refused as a whole, by the name of the first limit that cannot be: a limit that is passed over would judge unseen. */
export function parseLimitsFile(value: unknown): Result<Readonly<Record<string, number>>> {
  const read = readSchema(fileSchema, value, 'limits-invalid', 'The limits file');
  if (!read.ok) return read;
  // As written: a schema leaves out a key such as __proto__, which is no limit either.
  const given = (value as { readonly limits: Readonly<Record<string, unknown>> }).limits;
  for (const [id, limit] of Object.entries(given)) {
    const wrong = refuseLimit(id, limit);
    if (wrong !== null) return failed('limits-invalid', `The limits file cannot be used. ${wrong}`);
  }
  return done(given as Readonly<Record<string, number>>);
}
