/** What a thumb does with a stick: push, let go, turn along the gate, lead through the middle. Tilts in degrees, gate's axes. */
import type { Bench } from './bench.ts';
import type { Chance } from './chance.ts';
import { FULL_TILT, gateRadius } from './gate.ts';
import type { HandStyle } from './hand-style.ts';
import { minus, plus, polar, times, type Vec } from './plane.ts';

const MOST_ASIDE = 8;

export class Hand {
  readonly #bench: Bench;
  readonly #style: HandStyle;
  readonly #chance: Chance;

  constructor(bench: Bench, style: HandStyle, chance: Chance) {
    this.#bench = bench;
    this.#style = style;
    this.#chance = chance;
  }

  /** This style's time, a little different each time. */
  around(seconds: number): number {
    return seconds * this.#chance.between(0.75, 1.3);
  }

  /** The direction that a push asked for so really takes. */
  aimed(degrees: number): number {
    return degrees + this.#chance.within(this.#style.aim, MOST_ASIDE);
  }

  react(): void {
    this.#bench.leave(this.around(this.#style.reactSeconds));
  }

  /** To the gate in this direction, and held there. Says which direction it is held in at last. */
  push(degrees: number, holdSeconds = this.around(this.#style.holdSeconds)): number {
    const { slides, pushSeconds, pressure } = this.#style;
    const hard = 1 + this.around(pressure);
    this.lead(this.pressed(degrees, hard), this.around(pushSeconds));
    const to = this.#chance.happens(slides) ? degrees + this.#chance.between(-10, 10) : degrees;
    const start = this.#bench.now;
    this.#bench.play(holdSeconds, (t) => {
      const at = degrees + (to - degrees) * gently((t - start) / holdSeconds);
      return plus(this.pressed(at, hard), this.tremor(t));
    });
    return to;
  }

  /** From where the stick stands to this tilt, gently off and gently on. */
  lead(to: Vec, seconds: number): void {
    const start = this.#bench.now;
    const from = this.#bench.stick.place;
    this.#bench.play(seconds, (t) => {
      const way = times(minus(to, from), gently((t - start) / seconds));
      return plus(plus(from, way), this.tremor(t));
    });
  }

  /** Slowly along a line through the middle from the gate that it is held at to the one opposite. */
  sweep(from: number, seconds: number): void {
    const to = from + 180 + this.#chance.within(1.5, 4);
    const hard = 1 + this.around(this.#style.pressure);
    const [start, end] = [this.#bench.stick.place, this.pressed(to, hard)];
    const bow = FULL_TILT * this.#chance.within(0.015, 0.04);
    const begun = this.#bench.now;
    this.#bench.play(seconds, (t) => {
      const share = steadily((t - begun) / seconds);
      const aside = polar(bow * Math.sin(Math.PI * share), from + 90);
      return [times(minus(end, start), share), aside, this.tremor(t)].reduce(plus, start);
    });
    const stands = this.#bench.now;
    this.#bench.play(this.#chance.between(0.2, 0.45), (t) => plus(end, this.tremor(Math.max(t, stands))));
  }

  /** Beyond the gate by this factor, where the gate stops it. */
  pressed(degrees: number, factor: number): Vec {
    const { gate } = this.#bench.unit.parts[this.#bench.moves];
    return polar(gateRadius(gate, degrees) * factor, degrees);
  }

  tremor(t: number): Vec {
    const { tremor, tremorHertz } = this.#style;
    const size = FULL_TILT * tremor;
    const phase = 2 * Math.PI * tremorHertz * t;
    return {
      x: size * (Math.sin(phase) + 0.6 * Math.sin(0.37 * phase + 1)),
      y: size * (Math.sin(1.13 * phase + 2) + 0.6 * Math.sin(0.29 * phase + 4)),
    };
  }
}

/** 0 to 1 with the least jerk. */
export function gently(share: number): number {
  const s = Math.min(1, Math.max(0, share));
  return s ** 3 * (10 - 15 * s + 6 * s * s);
}

/** 0 to 1 at an even speed, with short gentle ends. */
function steadily(share: number): number {
  const ends = 0.12;
  const s = Math.min(1, Math.max(0, share));
  const speed = 1 / (1 - ends);
  if (s < ends) return (speed * s * s) / (2 * ends);
  if (s > 1 - ends) return 1 - (speed * (1 - s) ** 2) / (2 * ends);
  return speed * (s - ends / 2);
}
