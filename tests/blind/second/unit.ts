/** Everything of one draw: the pad, its two parts, the numbers it keeps, and the hand that takes the survey. */
import type { HandStyle } from './hand-style.ts';
import type { PadPlan } from './pad-plan.ts';
import type { Part } from './part.ts';
import type { Slip } from './slips.ts';
import type { StoredNumbers } from './stored-numbers.ts';

export const SIDES = ['left', 'right'] as const;
export type Side = (typeof SIDES)[number];

export interface Unit {
  readonly seed: number;
  readonly plan: PadPlan;
  /** The left one is surveyed. */
  readonly parts: Readonly<Record<Side, Part>>;
  readonly stored: Readonly<Record<Side, StoredNumbers>>;
  readonly style: HandStyle;
  readonly slip: Slip | null;
}
