/** Collects what one turn along the gate shows, sample by sample. */
import { angleOf } from '../../geometry/angle.ts';
import { directionCount, directionIndex } from '../../geometry/directions.ts';
import type { Pair } from '../../pad/stick.ts';
import type { Turn } from './evidence.ts';
import type { RimSample } from './rim-sample.ts';

export class TurnUnderWay {
  readonly way: Turn['way'];
  /** Accumulated angle where it began. */
  readonly startAngle: number;
  #startUs = Number.NaN;
  readonly #points = Array.from({ length: directionCount }, (): Pair | null => null);
  readonly #radii = new Float64Array(directionCount).fill(-1);
  readonly #extremes = {
    xMin: Number.POSITIVE_INFINITY,
    xMax: Number.NEGATIVE_INFINITY,
    yMin: Number.POSITIVE_INFINITY,
    yMax: Number.NEGATIVE_INFINITY,
  };
  #lastUs = Number.NaN;
  #lastAngle: number;
  #leastRadius = Number.POSITIVE_INFINITY;

  /** Its first sample is the first that is added. */
  constructor(way: Turn['way'], startAngle: number) {
    this.way = way;
    this.startAngle = startAngle;
    this.#lastAngle = startAngle;
  }

  /** Degrees turned so far in its own way. */
  get turned(): number {
    return this.way === 'counterClockwise' ? this.#lastAngle - this.startAngle : this.startAngle - this.#lastAngle;
  }

  /** Farthest angle it came to. */
  get lastAngle(): number {
    return this.#lastAngle;
  }

  get leastRadius(): number {
    return this.#leastRadius;
  }

  /** Largest radius in each direction, counts; negative where it has no reading. */
  get radii(): Float64Array {
    return this.#radii;
  }

  add(sample: RimSample): void {
    const { t, x, y, dx, dy, radius } = sample;
    if (Number.isNaN(this.#startUs)) this.#startUs = t;
    const direction = directionIndex(angleOf(dx, dy));
    if (radius > (this.#radii[direction] ?? Number.POSITIVE_INFINITY)) {
      this.#radii[direction] = radius;
      this.#points[direction] = { x: dx, y: dy };
    }
    const extremes = this.#extremes;
    extremes.xMin = Math.min(extremes.xMin, x);
    extremes.xMax = Math.max(extremes.xMax, x);
    extremes.yMin = Math.min(extremes.yMin, y);
    extremes.yMax = Math.max(extremes.yMax, y);
    this.#leastRadius = Math.min(this.#leastRadius, radius);
    this.#lastUs = t;
    this.#lastAngle = sample.angle;
  }

  finish(): Turn {
    return {
      way: this.way,
      startUs: this.#startUs,
      endUs: this.#lastUs,
      points: [...this.#points],
      extremes: { ...this.#extremes },
    };
  }
}
