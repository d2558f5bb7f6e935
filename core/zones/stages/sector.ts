/** A scaled radial zone whose edges depend on the direction. */
import { z } from 'zod';
import { innerSchema, isInnerWithin, INNER_WITHIN, offSchema, outerSchema } from './edges.ts';
import { stretch } from './scaled-radial.ts';
import type { Step } from './step.ts';

const edgesSchema = z.strictObject({ inner: innerSchema, outer: outerSchema }).refine(isInnerWithin, INNER_WITHIN);

export const sectorSchema = z.strictObject({
  zone: z.literal('sector'),
  blend: z.boolean(),
  sectors: z.array(edgesSchema).min(1).max(360).readonly(),
  off: offSchema,
});

/**
 * N equal sectors, counter-clockwise, the first centred on 0° (+x). Stepped: a direction has the edges of the sector it
 * lies in, one on a border those of the next. Blended: linear in angle between the two nearest sector centres.
 */
export function compileSector(stage: z.infer<typeof sectorSchema>): Step {
  const count = stage.sectors.length;
  const inner = Float64Array.from(stage.sectors, (one) => one.inner);
  const outer = Float64Array.from(stage.sectors, (one) => one.outer);
  const { blend } = stage;
  return (v) => {
    const turns = Math.atan2(v[1] ?? 0, v[0] ?? 0) / (2 * Math.PI);
    const place = (turns < 0 ? turns + 1 : turns) * count;
    if (!blend) {
      const sector = Math.floor(place + 0.5) % count;
      stretch(v, inner[sector] ?? 0, outer[sector] ?? 1);
      return;
    }
    const before = Math.floor(place) % count;
    const after = (before + 1) % count;
    const share = place - Math.floor(place);
    stretch(v, mix(inner, before, after, share), mix(outer, before, after, share));
  };
}

function mix(edge: Float64Array, before: number, after: number, share: number): number {
  return (edge[before] ?? 0) * (1 - share) + (edge[after] ?? 0) * share;
}
