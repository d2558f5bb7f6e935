/** Turns of a stick along its gate: three each way as a good hand does them, or with a slip. */
import type { Bench } from './bench.ts';
import type { Chance } from './chance.ts';
import type { Hand } from './hand.ts';
import type { HandStyle } from './hand-style.ts';
import { plus } from './plane.ts';
import type { Slip } from './slips.ts';

const TURNS = 3;

export class Turns {
  readonly #bench: Bench;
  readonly #hand: Hand;
  readonly #style: HandStyle;
  readonly #chance: Chance;

  constructor(bench: Bench, hand: Hand, style: HandStyle, chance: Chance) {
    this.#bench = bench;
    this.#hand = hand;
    this.#style = style;
    this.#chance = chance;
  }

  /** `way` +1 is counter-clockwise. */
  oneWay(way: 1 | -1, slip: Slip | null): void {
    if (slip === 'short-turns') for (let turn = 0; turn < TURNS; turn += 1) this.#go(way, 350, slip);
    else this.#go(way, 360 * TURNS + this.#chance.between(20, 60), slip);
  }

  #go(way: 1 | -1, degrees: number, slip: Slip | null): void {
    const start = this.#chance.between(0, 360);
    this.#hand.push(start, this.#chance.between(0.1, 0.25));
    const begun = this.#bench.now;
    const { rateHz } = this.#bench.unit.plan;
    const seconds =
      slip === 'too-fast-turns' ? Math.max(0.25, 18 / rateHz) : this.#hand.around(this.#style.turnSeconds);
    const angle = this.#angles(seconds, slip);
    const pressure = this.#hand.around(this.#style.pressure);
    const leavesAt = this.#chance.between(0, 360);
    this.#bench.play(
      600,
      (t) => {
        const turned = angle(t - begun);
        const hard = pressure * (1 + 0.4 * Math.sin(4.3 * t));
        const left = slip === 'left-gate' ? depthAt(turned, leavesAt) : 0;
        const place = this.#hand.pressed(start + way * Math.min(turned, degrees), 1 + hard - left);
        return plus(place, this.#hand.tremor(t));
      },
      () => angle(this.#bench.now - begun) >= degrees,
    );
    this.#bench.leave(0.05);
    this.#bench.leave(this.#hand.around(0.5));
  }

  /** Degrees turned so many seconds after the start: uneven, always forward but where the slip is to turn back. */
  #angles(seconds: number, slip: Slip | null): (after: number) => number {
    const { uneven } = this.#style;
    const speed = 360 / seconds;
    const [slow, quick] = [this.#chance.between(0.7, 1.1), this.#chance.between(2, 3.4)];
    const [first, second] = [this.#chance.between(0, 6.28), this.#chance.between(0, 6.28)];
    const wave = (turns: number, hertz: number, phase: number): number =>
      (Math.sin(2 * Math.PI * hertz * turns + phase) - Math.sin(phase)) / (2 * Math.PI * hertz);
    return (after) => {
      const turns = after / seconds;
      const even = turns + uneven * (wave(turns, slow, first) + 0.5 * wave(turns, quick, second));
      return slip === 'turned-back' ? turnedBackAngle(360 * even, speed) : 360 * even;
    };
  }
}

/** Every 360° the hand goes back by 40° and on again, at the speed of the turn. */
function turnedBackAngle(degrees: number, speed: number): number {
  const BACK = 40;
  const way = speed > 0 ? 360 + 2 * BACK : 360;
  const turn = Math.floor(degrees / way);
  const within = degrees - turn * way;
  if (within < 200) return 360 * turn + within;
  return 360 * turn + (within < 200 + BACK ? 400 - within : within - 2 * BACK);
}

/** How far the thumb comes off the rim once a turn, over some 50°, share of the radius. */
function depthAt(turned: number, at: number): number {
  const off = ((turned - at) % 360) + (turned < at ? 360 : 0);
  return off < 50 ? 0.5 * Math.sin((Math.PI * off) / 50) : 0;
}
