/** What is known of a gate's size while it is being felt out: how far out a stick must be to be on its rim. */
import { angleOf } from '../../geometry/angle.ts';
import { directionCount, directionIndex } from '../../geometry/directions.ts';

/** On the rim: at least this share of the usual outer radius. Gates off centre about the rest stay well above. */
const RIM_SHARE = 0.5;
/** A radius that grows by less changes nothing that is decided with it. */
const NOTICED = 1.02;

/** Largest radius seen in each of the 72 directions; the usual outer radius is their median over directions seen. */
export class OuterRadius {
  readonly #largest = new Float64Array(directionCount);
  readonly #counted = new Float64Array(directionCount);
  #usual = 0;

  /** Least radius that is on the rim, as far as is known now. */
  get least(): number {
    return RIM_SHARE * this.#usual;
  }

  /** The median over the directions seen of the largest radius, in counts. */
  get usual(): number {
    return this.#usual;
  }

  see(dx: number, dy: number, radius: number): void {
    const direction = directionIndex(angleOf(dx, dy));
    if (radius <= (this.#largest[direction] ?? 0)) return;
    this.#largest[direction] = radius;
    if (radius < NOTICED * (this.#counted[direction] ?? 0)) return;
    this.#counted[direction] = radius;
    const seen = this.#counted.filter((one) => one > 0).sort();
    this.#usual = seen[seen.length >> 1] ?? 0;
  }
}
