/** About which size a fault should be seen half of the time, and the sizes that its detection curve is taken at. */
import type { FaultName } from './faults.ts';

interface GradedSize {
  /** In the fault's own unit. */
  readonly about: number;
  /** Whether the bench asks for it; else it is where a curve begins to look. */
  readonly isWanted: boolean;
}

const wanted = (about: number): GradedSize => ({ about, isWanted: true });
const guessed = (about: number): GradedSize => ({ about, isWanted: false });

/** Null where a fault has no degrees. */
const sizes: Readonly<Record<FaultName, GradedSize | null>> = {
  'off-centre-part': wanted(2),
  'seat-tilt': wanted(0.6),
  skew: wanted(5),
  'short-side': wanted(3),
  turned: guessed(6),
  clipped: guessed(2),
  curved: guessed(3),
  'shared-ground': guessed(4),
  'dead-sector': wanted(10),
  'loose-sector': guessed(10),
  'dead-spot': wanted(1),
  'worn-track': wanted(0.5),
  contact: wanted(10),
  spikes: guessed(10),
  noise: wanted(3),
  'slow-return': guessed(0.3),
  'loose-return': guessed(1),
  overshoot: guessed(5),
  'two-rests': guessed(1.5),
  'outlier-rest': guessed(5),
  'drifting-rest': guessed(1.5),
  'stale-numbers': guessed(2.5),
  'firmware-band': guessed(2),
  'inverted-axis': null,
  'swapped-axes': null,
  'trigger-stays': guessed(10),
  'trigger-dead': null,
};

const STEPS = [1 / 8, 1 / 4, 1 / 2, 3 / 4, 1, 1.5, 2, 3, 4, 6];

export interface Graded {
  readonly curve: readonly number[];
  /** About what should be seen half of the time. */
  readonly about: number;
  /** Where in the curve that is: there it begins to look. */
  readonly start: number;
  readonly wanted: number | null;
}

/** Null where a fault has no degrees. */
export function gradedSizes(name: FaultName): Graded | null {
  const size = sizes[name];
  if (size === null) return null;
  const curve = STEPS.map((step) => Number((size.about * step).toPrecision(3))).filter((one) => isFault(name, one));
  return { curve, about: size.about, start: curve.indexOf(size.about), wanted: size.isWanted ? size.about : null };
}

/** So many times the noise of a sound part is a fault from more than once on. */
function isFault(name: FaultName, size: number): boolean {
  return name !== 'noise' || size > 1;
}
