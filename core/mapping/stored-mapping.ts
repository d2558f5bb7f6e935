/** The mapping that the pad itself stores, from the `layers` mark of a log. */
import { z } from 'zod';
import type { Mark } from '../log/visitor.ts';
import { STICKS } from '../pad/stick.ts';
import { checkMapping } from './check-mapping.ts';
import { stickMappingSchema } from './mapping-file.ts';
import type { PadMapping } from './mapping.ts';

const layerSchema = z.partialRecord(z.string(), z.unknown()).nullish();
const detailSchema = z.object({ layers: z.object({ user: layerSchema, factory: layerSchema }) });

/**
 * Reads the last mark `["m",t,"layers",{"layers":{"user":{"left":{"x":{…},"y":{…}},"right":{…}},"factory":{…}}}]`.
 * Each stick takes the `user` layer's mapping where there is a good one, else the `factory` layer's: so does a pad,
 * which passes over a layer without its validity marker. Null where no stick has either.
 */
export function storedMapping(marks: readonly Mark[]): PadMapping | null {
  const mark = marks.findLast((one) => one.name === 'layers');
  const read = detailSchema.safeParse(mark?.detail);
  if (!read.success) return null;
  const { user, factory } = read.data.layers;
  const found = STICKS.flatMap((stick) => {
    const mapping = goodMapping(user?.[stick]) ?? goodMapping(factory?.[stick]);
    return mapping === null ? [] : [[stick, mapping] as const];
  });
  return found.length === 0 ? null : Object.fromEntries(found);
}

function goodMapping(value: unknown) {
  const read = stickMappingSchema.safeParse(value);
  return read.success && checkMapping(read.data) === null ? read.data : null;
}
