/** A stick let go: its spring brings it back, dry friction stops it short of the middle, on the side it came from. */
import type { Pair } from '../pad/stick.ts';
import type { ReturnBuild } from './build.ts';
import type { Chance } from './chance.ts';

/** Step of the integration: short against the return of the stick, some 60 ms. */
const STEP_SECONDS = 250e-6;

/** Tilt of one axis and its rate per second. */
interface Motion {
  tilt: number;
  rate: number;
}

/**
 * The free stick, each axis on its own: acceleration = −ω²·tilt − 2ζω·rate − friction against the motion, and no motion
 * where friction holds the spring. The band of friction is drawn anew with every release.
 */
export class StickReturn {
  readonly #build: ReturnBuild;
  readonly #chance: Chance;
  readonly #x: Motion = { tilt: 0, rate: 0 };
  readonly #y: Motion = { tilt: 0, rate: 0 };
  #band: Pair;

  constructor(build: ReturnBuild, chance: Chance) {
    this.#build = build;
    this.#chance = chance;
    this.#band = this.#drawBand();
  }

  /** Lets the stick go at a tilt, at rest in the hand. */
  letGo(tilt: Pair): void {
    this.#x.tilt = tilt.x;
    this.#y.tilt = tilt.y;
    this.#x.rate = 0;
    this.#y.rate = 0;
    this.#band = this.#drawBand();
  }

  /** Lets time pass; answers with the tilt at its end. */
  pass(seconds: number): Pair {
    if (this.#isHeld(this.#x, this.#band.x) && this.#isHeld(this.#y, this.#band.y))
      return { x: this.#x.tilt, y: this.#y.tilt };
    const steps = Math.max(1, Math.ceil(seconds / STEP_SECONDS));
    for (let step = 0; step < steps; step += 1) {
      this.#step(this.#x, this.#band.x, seconds / steps);
      this.#step(this.#y, this.#band.y, seconds / steps);
    }
    return { x: this.#x.tilt, y: this.#y.tilt };
  }

  /** Stands still, and friction holds it there. */
  #isHeld(axis: Motion, band: number): boolean {
    return axis.rate === 0 && Math.abs(axis.tilt) <= band;
  }

  #step(axis: Motion, band: number, seconds: number): void {
    const omega = 2 * Math.PI * this.#build.naturalHz;
    const spring = -omega * omega * axis.tilt;
    const grip = omega * omega * band;
    if (this.#isHeld(axis, band)) return;
    const against = axis.rate === 0 ? Math.sign(spring) : Math.sign(axis.rate);
    const rate = axis.rate + (spring - 2 * this.#build.dampingRatio * omega * axis.rate - grip * against) * seconds;
    // Friction can stop a motion, never turn it round.
    axis.rate = axis.rate !== 0 && rate * axis.rate < 0 ? 0 : rate;
    axis.tilt += axis.rate * seconds;
  }

  #drawBand(): Pair {
    const share = (): number => Math.max(0.2, 1 + this.#build.frictionSpread * this.#chance.normal());
    return { x: this.#build.friction.x * share(), y: this.#build.friction.y * share() };
  }
}
