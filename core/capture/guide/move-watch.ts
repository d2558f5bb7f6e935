/** Watches whether a stick follows what is asked of it, to say what is seen where it does not. */
import type { Pair, StickFields, StickId } from '../../pad/stick.ts';

/** Nothing happened for so long that the hand is told what is seen. */
const PATIENCE_US = 6_000_000;

/** How much a stick moved since something was asked. */
export class MoveWatch {
  readonly #fields: StickFields;
  #sinceUs: number;
  #readings = 0;
  #least: Pair = { x: Number.POSITIVE_INFINITY, y: Number.POSITIVE_INFINITY };
  #greatest: Pair = { x: Number.NEGATIVE_INFINITY, y: Number.NEGATIVE_INFINITY };

  constructor(fields: StickFields, sinceUs: number) {
    this.#fields = fields;
    this.#sinceUs = sinceUs;
  }

  start(t: number): void {
    this.#sinceUs = t;
    this.#readings = 0;
    this.#least = { x: Number.POSITIVE_INFINITY, y: Number.POSITIVE_INFINITY };
    this.#greatest = { x: Number.NEGATIVE_INFINITY, y: Number.NEGATIVE_INFINITY };
  }

  reading(x: number, y: number): void {
    this.#readings += 1;
    this.#least = { x: Math.min(x, this.#least.x), y: Math.min(y, this.#least.y) };
    this.#greatest = { x: Math.max(x, this.#greatest.x), y: Math.max(y, this.#greatest.y) };
  }

  isLong(t: number): boolean {
    return t - this.#sinceUs >= PATIENCE_US;
  }

  /** It was said; it is not long again before `start`. */
  rest(): void {
    this.#sinceUs = Number.POSITIVE_INFINITY;
  }

  /** What is seen of the stick, as a sentence; `stick` as in "left". */
  says(stick: StickId): string {
    if (this.#readings === 0)
      return `Nothing comes from the ${stick} stick: if it does move, the pad has gone silent; reconnect it.`;
    const { x, y } = this.#fields;
    const share = Math.max(
      (this.#greatest.x - this.#least.x) / (x.maximum - x.minimum),
      (this.#greatest.y - this.#least.y) / (y.maximum - y.minimum),
    );
    if (share < 0.01)
      return `The readings of the ${stick} stick do not change: it was not moved, or its sensor is dead.`;
    return `The ${stick} stick moved by ${Math.round(100 * share)} % of its range, which is too little.`;
  }
}
