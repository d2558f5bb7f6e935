/** The sizes at which each fault's detection curve is taken, in the units of `faultUnits`; null where a fault has no graded size. */
import type { FaultName } from '../../core/simulate/faults.ts';

export const curveSizes: Readonly<Record<FaultName, readonly number[] | null>> = {
  'stale-mapping': [1, 2, 3, 4, 5, 6, 8, 10],
  'off-centre-part': [0.5, 1, 1.5, 1.75, 2, 2.5, 3, 4],
  'seat-not-flat': [0.25, 0.5, 0.6, 0.7, 0.8, 1, 1.25, 1.5],
  'turned-part': [2, 4, 5, 6, 7, 8, 10, 14],
  'skewed-part': [1, 2, 3, 3.5, 4, 5, 6, 8],
  'short-range': [0.5, 1, 1.5, 2, 2.5, 3, 4, 5],
  'clipped-sensor': [0.25, 0.5, 1, 1.5, 2, 3, 4, 6],
  'worn-track': [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.75, 1],
  'noisy-joint': [1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4],
  'dead-axis': null,
  'swapped-axes': null,
  'inverted-axis': null,
  'loose-return': [0.5, 1, 1.5, 2, 2.5, 3, 4, 6],
  overshoot: [1, 2, 3, 4, 5, 6, 8, 12],
  'layers-disagree': [1, 2, 3, 4, 5, 6, 8, 12],
  'inputs-fail': [2, 3, 4, 5, 6, 8, 12, 20],
  'disturbed-rest': [0.5, 1, 1.5, 2, 2.5, 3, 4, 6],
  'warming-up': [1, 2, 3, 4, 6, 8, 12],
};

export const blindFaults = Object.keys(curveSizes) as readonly FaultName[];

/** Reported, not gated: whether a drift is significant yet is a matter of how long one waits. */
export const ungatedFaults: ReadonlySet<FaultName> = new Set<FaultName>(['warming-up']);

/** Nothing can be done about them at the stick, whose verdict is to keep it. */
export const padFaults: ReadonlySet<FaultName> = new Set<FaultName>(['inputs-fail']);

/** What the just-visible size must not exceed to matter at the bench; the faults not named have none set. */
export const wantedSizes: Readonly<Partial<Record<FaultName, number>>> = {
  'off-centre-part': 2,
  'seat-not-flat': 1,
  'skewed-part': 5,
  'short-range': 3,
  'worn-track': 0.5,
  'noisy-joint': 3,
};
