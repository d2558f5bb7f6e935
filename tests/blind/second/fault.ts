/** What a fault of some size does to a drawn pad. */
import type { Chance } from './chance.ts';
import type { PadPlan } from './pad-plan.ts';
import type { Part } from './part.ts';

export interface Sound {
  readonly part: Part;
  readonly plan: PadPlan;
  /** Share of the half travel by which the numbers that the pad keeps are another part's. */
  readonly stale: number;
}

export interface Fault {
  /** What the size is in. */
  readonly unit: string;
  readonly apply: (sound: Sound, size: number, chance: Chance) => Sound;
}

export function changePart({ part, ...rest }: Sound, change: Partial<Part>): Sound {
  return { ...rest, part: { ...part, ...change } };
}

export function changePlan({ plan, ...rest }: Sound, change: Partial<PadPlan>): Sound {
  return { ...rest, plan: { ...plan, ...change } };
}
