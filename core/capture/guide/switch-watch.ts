/** What was seen of one on-off control: pressed, released, and how long its contact bounced. */

/**
 * Edges closer together than this belong to one press or one release. Common practice: no hand presses twice within
 * 25 ms, and a worn contact settles sooner.
 */
export const BOUNCE_WINDOW_US = 25_000;
/** Down, up and down again: two edges are a short tap, however short. */
const LEAST_EDGES = 3;

export class SwitchWatch {
  down = false;
  pressed = false;
  released = false;
  /** Longest time from the first to the last edge of one press or release, in µs; null before the first edge. */
  bounceUs: number | null = null;
  #burstEdges = 0;
  #burstStart = Number.NEGATIVE_INFINITY;
  #lastEdge = Number.NEGATIVE_INFINITY;

  /** Takes one reading; answers whether anything changed. */
  take(t: number, down: boolean): boolean {
    if (down === this.down) return false;
    this.down = down;
    if (down) this.pressed = true;
    else if (this.pressed) this.released = true;
    if (t - this.#lastEdge > BOUNCE_WINDOW_US) {
      this.#burstStart = t;
      this.#burstEdges = 0;
    }
    this.#lastEdge = t;
    this.#burstEdges += 1;
    this.bounceUs = Math.max(this.bounceUs ?? 0, this.#burstEdges < LEAST_EDGES ? 0 : t - this.#burstStart);
    return true;
  }

  startAgain(): void {
    this.pressed = this.down;
    this.released = false;
    this.bounceUs = null;
  }
}
