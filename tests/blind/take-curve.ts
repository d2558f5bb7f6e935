/** The detection curve of a fault: how many of its draws are found at each size. */
import type { Count } from './exact-share.ts';
import type { CurvePoint } from './just-visible.ts';

/**
 * From `start` in the rising `sizes` upwards until all were found twice in a row, then downwards until none was twice in a row: beyond,
 * sizes tell no more. Points by their size.
 */
export async function takeCurve(
  sizes: readonly number[],
  start: number,
  find: (size: number) => Promise<Count>,
): Promise<CurvePoint[]> {
  const walk = async (way: readonly number[], isTold: (count: Count) => boolean): Promise<CurvePoint[]> => {
    const points: CurvePoint[] = [];
    for (const size of way) {
      points.push({ size, ...(await find(size)) });
      if (points.slice(-2).filter(isTold).length === 2) break;
    }
    return points;
  };
  const up = await walk(sizes.slice(start), ({ found, of }) => found === of);
  const down = await walk(sizes.slice(0, start).toReversed(), ({ found }) => found === 0);
  return [...down.toReversed(), ...up];
}
