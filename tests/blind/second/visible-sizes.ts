/** The size at which a fault should be seen half of the time, by kind of pad: as its curve gave it, or where the bench asks for it. */
import type { FaultName } from './faults.ts';
import type { PadKind } from './pad-plan.ts';
import { gradedSizes } from './sizes.ts';

/** Null: its curve does not cross one half. */
export type SizesOfPad = Readonly<Partial<Record<FaultName, number | null>>>;
export type VisibleSizes = Readonly<Partial<Record<PadKind, SizesOfPad>>>;

/** A fault without degrees is there whole: 1. Null where its curve was taken and gives none. */
export function sizeIn(taken: VisibleSizes, pad: PadKind, name: FaultName): number | null {
  const graded = gradedSizes(name);
  if (graded === null) return 1;
  const size = taken[pad]?.[name];
  return size === undefined ? graded.about : size;
}
