/** Targets, tolerance and tone of the fitting aid; kept while the program runs, per axis of the pad in hand. */
import type { AxisLine } from '../axis-list.ts';
import { distanceToTarget, type TargetDistance } from './target-distance.ts';
import type { WindowMean } from './window-mean.ts';

/** Half of one per cent of the field: twenty counts of 4 096. Common practice for a first fit; the user sets their own. */
const FIRST_TOLERANCE = 0.005;

/** One axis as it reads now. */
export interface AxisFit {
  readonly axis: AxisLine;
  readonly mean: WindowMean | null;
  readonly target: number;
  readonly distance: TargetDistance | null;
}

export class FittingState {
  #targets = $state<Record<string, number>>({});
  #tolerances = $state<Record<string, number>>({});
  muted = $state(false);

  /** The middle of the field unless another target was set. */
  targetOf(axis: AxisLine): number {
    return this.#targets[fieldKey(axis)] ?? fieldMiddle(axis);
  }

  /** A target outside of the field is refused; the old one stays. */
  aimAt(axis: AxisLine, target: number): boolean {
    if (!Number.isFinite(target) || target < axis.minimum || target > axis.maximum) return false;
    this.#targets[fieldKey(axis)] = target;
    return true;
  }

  aimAtMiddle(axis: AxisLine): void {
    this.#targets[fieldKey(axis)] = fieldMiddle(axis);
  }

  /** Takes the reading as it is now, to the count. */
  hold(fit: AxisFit): void {
    if (fit.mean !== null) this.#targets[fieldKey(fit.axis)] = Math.round(fit.mean.mean);
  }

  /** Counts either side of the target, one for both axes of a stick; above 0. */
  toleranceOf(axis: AxisLine): number {
    return (
      this.#tolerances[toleranceKey(axis)] ?? Math.max(1, Math.round((axis.maximum - axis.minimum) * FIRST_TOLERANCE))
    );
  }

  setTolerance(axis: AxisLine, counts: number): boolean {
    if (!Number.isFinite(counts) || counts <= 0 || counts > axis.maximum - axis.minimum) return false;
    this.#tolerances[toleranceKey(axis)] = counts;
    return true;
  }

  judge(axis: AxisLine, mean: WindowMean | null): AxisFit {
    const target = this.targetOf(axis);
    const distance = mean === null ? null : distanceToTarget(mean.mean, target, this.toleranceOf(axis), axis);
    return { axis, mean, target, distance };
  }
}

/** The larger distance of a stick's axes in tolerances: what the tone follows. Null while an axis has no reading. */
export function worstRatio(fits: readonly AxisFit[]): number | null {
  let worst = 0;
  for (const { distance } of fits) {
    if (distance === null) return null;
    worst = Math.max(worst, distance.ratio);
  }
  return fits.length === 0 ? null : worst;
}

/** A pad with other field limits has targets of its own. */
function fieldKey(axis: AxisLine): string {
  return `${axis.id} ${axis.minimum} ${axis.maximum}`;
}

function toleranceKey(axis: AxisLine): string {
  return `${axis.stick} ${axis.minimum} ${axis.maximum}`;
}

export function fieldMiddle(axis: AxisLine): number {
  return (axis.minimum + axis.maximum) / 2;
}
