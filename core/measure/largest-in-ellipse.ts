/** The largest deflection over an elliptical region of raw counts. */
import { deflectAxis } from '../mapping/deflect-axis.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { Covariance } from '../numeric/covariance.ts';
import type { Pair, StickFields } from '../pad/stick.ts';

const DIRECTIONS = 180;
const SHRINKS = 60;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Largest |d| over (u − middle)ᵀ S⁻¹ (u − middle) ≤ factor², u and S in raw counts as reported, d free; a fraction.
 * |d| is convex in u under any mapping, so that it is largest on the border, which is walked once; every rise and fall
 * is then closed in on by golden section, to rounding.
 */
export function largestInEllipse(
  mapping: StickMapping,
  fields: StickFields,
  middle: Pair,
  covariance: Covariance,
  factor: number,
): number {
  const { xx, xy, yy } = covariance;
  const left = Math.sqrt(xx);
  const low = xx === 0 ? 0 : xy / left;
  const right = Math.sqrt(Math.max(0, yy - low * low));
  const at = (turn: number): number => {
    const cos = factor * Math.cos(turn);
    const sin = factor * Math.sin(turn);
    const x = deflectAxis(mapping.x, fields.x.up, middle.x + left * cos);
    const y = deflectAxis(mapping.y, fields.y.up, middle.y + low * cos + right * sin);
    return Math.sqrt(x * x + y * y);
  };
  const step = (2 * Math.PI) / DIRECTIONS;
  let before = at(-step);
  let here = at(0);
  let largest = here;
  for (let index = 0; index < DIRECTIONS; index += 1) {
    const next = at((index + 1) * step);
    if (here >= before && here >= next) largest = Math.max(largest, peak(at, (index - 1) * step, (index + 1) * step));
    before = here;
    here = next;
  }
  return largest;
}

function peak(at: (turn: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let atLeft = at(left);
  let atRight = at(right);
  for (let shrink = 0; shrink < SHRINKS; shrink += 1)
    if (atLeft > atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = at(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = at(right);
    }
  return Math.max(atLeft, atRight);
}
