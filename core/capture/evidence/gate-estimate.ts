/** How far out the gate is in each direction, as far as the stick's ways along it tell. */
import { directionCount } from '../../geometry/directions.ts';

/** What lies farther inside than this share of the gate is no reading at the gate: the hand let it slip inwards. */
const GATE_SHARE = 0.85;

/**
 * Per direction the largest radius of all ways along the gate, whole turns or parts; of three or more the second
 * largest, so that one false reading does not make all others look slack.
 */
export class GateEstimate {
  readonly #largest = new Float64Array(directionCount);
  readonly #second = new Float64Array(directionCount);
  readonly #ways = new Uint32Array(directionCount);

  /** `radii` in counts by direction, negative where a way has no reading. */
  add(radii: Float64Array): void {
    radii.forEach((radius, direction) => {
      if (radius < 0) return;
      this.#ways[direction] = (this.#ways[direction] ?? 0) + 1;
      const largest = this.#largest[direction] ?? 0;
      if (radius > largest) {
        this.#second[direction] = largest;
        this.#largest[direction] = radius;
      } else this.#second[direction] = Math.max(radius, this.#second[direction] ?? 0);
    });
  }

  isAtGate(direction: number, radius: number): boolean {
    const gate = (this.#ways[direction] ?? 0) >= 3 ? this.#second[direction] : this.#largest[direction];
    return radius >= GATE_SHARE * (gate ?? 0);
  }
}
