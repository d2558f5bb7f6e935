/** Settled readings that come out of a chain as anything but zero. */
import { exactUpperBound95 } from '../numeric/exact-upper-bound.ts';
import type { ZoneAnswer } from './chain.ts';
import { outputOf } from './output.ts';
import type { ChainFunction } from './run-chain.ts';

/**
 * A release leaks if any of its settled readings does; `releases` are the deflections read in each, x and y in turn. The bound is
 * the one-sided exact 95 % one on the share of releases that leak; it says by itself how little few releases prove, so that it is
 * given for any number of them. Null without a release.
 */
export function countLeaks(releases: readonly Float64Array[], run: ChainFunction): ZoneAnswer['leaks'] {
  const out = new Float64Array(2);
  let leaking = 0;
  let largestOutput = 0;
  for (const deflections of releases) {
    let largest = 0;
    for (let i = 0; i < deflections.length; i += 2)
      largest = Math.max(largest, outputOf(run, deflections[i] ?? Number.NaN, deflections[i + 1] ?? Number.NaN, out));
    if (largest > 0) leaking += 1;
    largestOutput = Math.max(largestOutput, largest);
  }
  const upperBound95 = exactUpperBound95(leaking, releases.length);
  if (upperBound95 === null) return null;
  return { releases: releases.length, leaking, share: leaking / releases.length, upperBound95, largestOutput };
}
