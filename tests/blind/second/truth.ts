/** What is so of a part, without noise, friction or hand: the numbers that a judgement may be held against. */
import { gateRadius } from './gate.ts';
import type { Part } from './part.ts';
import { plus, polar, sizeOf, type Vec } from './plane.ts';
import { sensedAt } from './sensor-law.ts';

export interface Truth {
  /** Least and greatest reading of each axis along the gate, and the reading at rest, shares of the half travel. */
  readonly least: Vec;
  readonly greatest: Vec;
  readonly rest: Vec;
  /** How much less one side reaches than the other, seen from the rest, % of the greater. */
  readonly sides: Vec;
  /** Degrees. */
  readonly seat: number;
  readonly skew: number;
  readonly turned: number;
}

export function truthOf(part: Part): Truth {
  const rest = sensedAt(part, plus(part.seat, part.springOff));
  const rim = Array.from({ length: 1440 }, (_, at) => sensedAt(part, polar(gateRadius(part.gate, at / 4), at / 4)));
  const [least, greatest] = [extreme(rim, Math.min), extreme(rim, Math.max)];
  const uneven = (axis: 'x' | 'y'): number => {
    const [one, other] = [greatest[axis] - rest[axis], rest[axis] - least[axis]];
    return 100 * (1 - Math.min(one, other) / Math.max(one, other));
  };
  const sides = { x: uneven('x'), y: uneven('y') };
  return { least, greatest, rest, sides, seat: sizeOf(part.seat), skew: part.skew, turned: part.turned };
}

function extreme(places: readonly Vec[], of: (...values: number[]) => number): Vec {
  return { x: of(...places.map(({ x }) => x)), y: of(...places.map(({ y }) => y)) };
}
