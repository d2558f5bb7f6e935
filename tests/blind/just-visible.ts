/** The size of a fault that is found in half of the cases, from its detection curve. */

export interface CurvePoint {
  readonly size: number;
  readonly found: number;
  readonly of: number;
}

/**
 * The shares are made never to fall with the size (pool adjacent violators: Ayer and others, Annals of Mathematical
 * Statistics 26, 1955), then read at one half by a straight line between neighbours. Null where the curve does not cross it.
 */
export function justVisible(curve: readonly CurvePoint[]): number | null {
  const pools = curve.map(({ size, found, of }) => ({ sizes: [size], found, of }));
  for (let index = 1; index < pools.length;) {
    const [before, here] = [pools[index - 1], pools[index]];
    if (before === undefined || here === undefined || before.found / before.of <= here.found / here.of) {
      index += 1;
      continue;
    }
    const merged = {
      sizes: [...before.sizes, ...here.sizes],
      found: before.found + here.found,
      of: before.of + here.of,
    };
    pools.splice(index - 1, 2, merged);
    index = Math.max(1, index - 1);
  }
  const steps = pools.flatMap(({ sizes, found, of }) => sizes.map((size) => ({ size, share: found / of })));
  const after = steps.findIndex(({ share }) => share >= 0.5);
  const [low, high] = [steps[after - 1], steps[after]];
  if (low === undefined || high === undefined) return null;
  return low.size + ((0.5 - low.share) / (high.share - low.share)) * (high.size - low.size);
}
