/** The contacts of the buttons: what the firmware sees of what is pressed. */
import type { SwitchBuild } from './build.ts';
import type { Chance } from './chance.ts';

/** How long a bouncing contact stays as it is, at least and at most: long enough to be met by a report now and then. */
const LEAST_SECONDS = 0.0008;
const MORE_SECONDS = 0.0022;

/** Bit n − 1 of a state is button n. Sound contacts follow at once; faulty ones bounce after every change, or fail. */
export class Switches {
  readonly #faulty: readonly SwitchBuild[];
  readonly #chance: Chance;
  #pressed = 0;
  /** By button: seconds since the last change, the state it bounces with, and until when. */
  readonly #bounces = new Map<number, { since: number; closed: boolean; until: number }>();

  constructor(faulty: readonly SwitchBuild[], chance: Chance) {
    this.#faulty = faulty;
    this.#chance = chance;
  }

  /** What is pressed now, after so many seconds; answers with what the contacts say. */
  pass(seconds: number, pressed: number): number {
    let seen = pressed;
    for (const one of this.#faulty) {
      const bit = 1 << (one.button - 1);
      const closed = one.fails === undefined ? this.#bounce(one, bit, seconds, pressed) : one.fails === 'closed';
      seen = closed ? seen | bit : seen & ~bit;
    }
    this.#pressed = pressed;
    return seen;
  }

  #bounce(one: SwitchBuild, bit: number, seconds: number, pressed: number): boolean {
    const isPressed = (pressed & bit) !== 0;
    if (isPressed !== ((this.#pressed & bit) !== 0))
      this.#bounces.set(one.button, { since: 0, closed: isPressed, until: this.#draw() });
    const bounce = this.#bounces.get(one.button);
    if (bounce === undefined) return isPressed;
    bounce.since += seconds;
    if (bounce.since >= one.bounceSeconds) {
      this.#bounces.delete(one.button);
      return isPressed;
    }
    while (bounce.until <= bounce.since) {
      bounce.closed = !bounce.closed;
      bounce.until += this.#draw();
    }
    return bounce.closed;
  }

  #draw(): number {
    return LEAST_SECONDS + MORE_SECONDS * this.#chance.next();
  }
}
