/** Report rate and gaps of one open pad, over the last second. */

const WINDOW_MICROS = 1_000_000;
const SLOTS = 10;

export class RateMeter {
  readonly #counts = new Uint32Array(SLOTS);
  #slot = 0;
  #slotStart: number;
  readonly #openedAt: number;
  gaps = 0;
  #known = 0;
  #allKnown = true;
  lastReportAt: number | null = null;

  constructor(openedAt: number) {
    this.#openedAt = openedAt;
    this.#slotStart = openedAt;
  }

  report(t: number): void {
    this.#advance(t);
    this.#counts[this.#slot] = (this.#counts[this.#slot] ?? 0) + 1;
    this.lastReportAt = t;
  }

  gap(lost: number | null): void {
    this.gaps += 1;
    if (lost === null) this.#allKnown = false;
    else this.#known += lost;
  }

  /** Reports known to be missing; null where nothing tells, as on a pad that does not count its reports. */
  get lost(): number | null {
    return this.gaps > 0 && this.#allKnown ? this.#known : null;
  }

  /** Reports a second over the last whole second; null during the first one. */
  rateHz(now: number): number | null {
    this.#advance(now);
    if (now - this.#openedAt < WINDOW_MICROS) return null;
    const span = WINDOW_MICROS - WINDOW_MICROS / SLOTS + (now - this.#slotStart);
    let sum = 0;
    for (const count of this.#counts) sum += count;
    return (sum * 1_000_000) / span;
  }

  #advance(now: number): void {
    let steps = Math.floor((now - this.#slotStart) / (WINDOW_MICROS / SLOTS));
    this.#slotStart += Math.max(0, steps) * (WINDOW_MICROS / SLOTS);
    for (steps = Math.min(steps, SLOTS); steps > 0; steps -= 1) {
      this.#slot = (this.#slot + 1) % SLOTS;
      this.#counts[this.#slot] = 0;
    }
  }
}
