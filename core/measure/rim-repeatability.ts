/** How well the turns of a rim agree, over the directions that are covered; fractions of full deflection. */
import { cycleErrors, type CycleErrors } from '../numeric/input-cycles.ts';
import { mean } from '../numeric/mean.ts';
import { variance } from '../numeric/variance.ts';
import type { DirectionReach } from './direction-measure.ts';

/**
 * Pooled spread √(Σ(n − 1)s²/Σ(n − 1)) of the reach over the turns of each direction, with its degrees of freedom.
 * Null with none.
 */
export function pooledSpread(directions: readonly DirectionReach[]): { spread: number | null; degrees: number } {
  let degrees = 0;
  let squares = 0;
  for (const { measure, clockwise, counterClockwise } of directions) {
    if (!measure.covered) continue;
    const reaches = [...clockwise, ...counterClockwise];
    degrees += reaches.length - 1;
    squares += (reaches.length - 1) * variance(reaches);
  }
  return { spread: degrees === 0 ? null : Math.sqrt(squares / degrees), degrees };
}

/**
 * Mean over the directions of |mean reach clockwise − mean reach counter-clockwise|. Without any true hysteresis it is
 * not 0 but about 0.65 of the spread with three turns each way: hold it against the spread. Null while no direction is covered.
 */
export function directionHysteresis(directions: readonly DirectionReach[]): number | null {
  const differences = directions
    .filter(({ measure }) => measure.covered)
    .map(({ clockwise, counterClockwise }) => Math.abs(mean(clockwise) - mean(counterClockwise)));
  return differences.length === 0 ? null : mean(differences);
}

/**
 * The largest differences that turns show, as a data sheet gives them: the covered directions are the inputs, turns
 * counter-clockwise the passes up and clockwise the passes down, as many of each as there are of the fewer (see `cycleErrors`).
 * Null while no direction is covered.
 */
export function turnErrors(directions: readonly DirectionReach[]): CycleErrors | null {
  const covered = directions.filter(({ measure }) => measure.covered);
  const passes = Math.min(...covered.flatMap((one) => [one.clockwise.length, one.counterClockwise.length]));
  if (covered.length === 0) return null;
  const rows = (way: 'clockwise' | 'counterClockwise'): number[][] =>
    Array.from({ length: passes }, (_, pass) => covered.map((one) => one[way][pass] ?? Number.NaN));
  return cycleErrors({ ascending: rows('counterClockwise'), descending: rows('clockwise') });
}
