/** Settings as an earlier version wrote them: one zone beside a chain that was null where the zone was asked about. */
import { z } from 'zod';
import { chainOf } from '../../core/zones/one-zone.ts';
import { parseChain } from '../../core/zones/parse-chain.ts';

const zoneSchema = z.object({
  shape: z.enum(['axial', 'radial', 'scaledRadial']),
  inner: z.number(),
  outer: z.number(),
});

/** The zone as a chain of one stage where there was no chain; it is asked for once, since what is written again has no zone. */
export function oneChain(raw: object): object {
  const { zone, chain, ...others } = raw as { zone?: unknown; chain?: unknown };
  if (chain !== undefined && chain !== null) return { ...others, chain };
  const read = zoneSchema.safeParse(zone);
  const made = read.success ? parseChain(chainOf(read.data)) : null;
  // What is no zone is passed over: the default stands, as where nothing was written.
  return made?.ok === true ? { ...others, chain: made.value } : others;
}
