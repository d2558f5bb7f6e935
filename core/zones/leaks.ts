/** Settled readings that come out of a chain as anything but zero. */
import type { Dwell } from '../capture/evidence.ts';
import { deflectAxis } from '../mapping/deflect-axis.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { exactUpperBound95 } from '../numeric/exact-upper-bound.ts';
import type { StickFields } from '../pad/stick.ts';
import type { ZoneAnswer } from './chain.ts';
import { outputOf } from './output.ts';
import type { ChainFunction } from './run-chain.ts';

/**
 * A release leaks if any of its settled readings does. The bound is the one-sided exact 95 % one on the share of
 * releases that leak; it says by itself how little few releases prove, so that it is given for any number of them.
 * Null without a release.
 */
export function countLeaks(
  dwells: readonly Dwell[],
  mapping: StickMapping,
  fields: StickFields,
  run: ChainFunction,
): ZoneAnswer['leaks'] {
  const out = new Float64Array(2);
  let leaking = 0;
  let largestOutput = 0;
  for (const { readings } of dwells) {
    let largest = 0;
    for (let i = 0; i < readings.length; i += 2) {
      const x = deflectAxis(mapping.x, fields.x.up, readings[i] ?? Number.NaN);
      const y = deflectAxis(mapping.y, fields.y.up, readings[i + 1] ?? Number.NaN);
      largest = Math.max(largest, outputOf(run, x, y, out));
    }
    if (largest > 0) leaking += 1;
    largestOutput = Math.max(largestOutput, largest);
  }
  const upperBound95 = exactUpperBound95(leaking, dwells.length);
  if (upperBound95 === null) return null;
  return { releases: dwells.length, leaking, share: leaking / dwells.length, upperBound95, largestOutput };
}
