/** The least, middle and greatest count of each axis that a pad keeps of its stick. */
import type { Chance } from './chance.ts';
import { countsOf, rounded, voltsOf } from './converter.ts';
import { gateRadius } from './gate.ts';
import type { Part } from './part.ts';
import type { PadPlan } from './pad-plan.ts';
import { plus, polar, type Vec } from './plane.ts';
import { sensedAt } from './sensor-law.ts';

export interface AxisNumbers {
  readonly min: number;
  readonly centre: number;
  readonly max: number;
}
export interface StoredNumbers {
  readonly x: AxisNumbers;
  readonly y: AxisNumbers;
}

/** How far inside of the gate a maker puts the edges, share of the half travel. */
const LEAST_INSIDE = 0.01;
const MOST_INSIDE = 0.03;

/** The numbers of a maker who knows the part without noise: its middle, and edges a little inside of its gate. */
export function numbersFor(part: Part, plan: PadPlan, chance: Chance): StoredNumbers {
  const place = (tilt: Vec): Vec => rounded(plan, countsOf(plan, voltsOf(part, sensedAt(part, tilt))));
  const rest = place(plus(part.seat, part.springOff));
  const rim = Array.from({ length: 720 }, (_, index) => place(polar(gateRadius(part.gate, index / 2), index / 2)));
  const axis = (name: 'x' | 'y'): AxisNumbers => {
    const edge = (end: number): number =>
      Math.round(end + (rest[name] - end) * chance.between(LEAST_INSIDE, MOST_INSIDE));
    const counts = rim.map((one) => one[name]);
    return { min: edge(Math.min(...counts)), centre: rest[name], max: edge(Math.max(...counts)) };
  };
  return { x: axis('x'), y: axis('y') };
}

/** Numbers of another part: middle and edges each moved by this share of the half travel, one way or the other. */
export function otherNumbers({ x, y }: StoredNumbers, share: number, chance: Chance): StoredNumbers {
  const moved = ({ min, centre, max }: AxisNumbers): AxisNumbers => {
    const by = Math.round(((max - min) / 2) * share) * chance.pick([-1, 1]);
    return { min: min + by, centre: centre + by, max: max + by };
  };
  return { x: moved(x), y: moved(y) };
}
