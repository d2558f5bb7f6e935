/** One stick of a simulated pad: the tilt of the part, held by a hand or free, and what its sensors make of it. */
import type { Pair } from '../pad/stick.ts';
import type { StickBuild } from './build.ts';
import { createChance, type Chance } from './chance.ts';
import { stopAtGate } from './gate.ts';
import type { HandMotion } from './hand-motion.ts';
import { ADC_MAXIMUM, convert, tiltOfPart } from './sensor.ts';
import { StickReturn } from './stick-return.ts';

export class SimulatedStick {
  /** What hands draw their wobble from. */
  readonly handChance: Chance;
  readonly #build: StickBuild;
  readonly #sensorChance: Chance;
  readonly #return: StickReturn;
  #tilt: Pair = { x: 0, y: 0 };
  #motion: HandMotion | null = null;
  #motionSeconds = 0;
  #lived = 0;
  #bend: Pair = { x: 0, y: 0 };

  constructor(build: StickBuild, seed: number, stream: number) {
    this.#build = build;
    this.handChance = createChance(seed, stream);
    this.#sensorChance = createChance(seed, stream + 1);
    this.#return = new StickReturn(build.back, createChance(seed, stream + 2));
  }

  /** Where the stick really stands. */
  get tilt(): Pair {
    return this.#tilt;
  }

  /** A hand is on the stick. */
  get held(): boolean {
    return this.#motion !== null;
  }

  /** A hand begins to do something; null lets go. */
  begin(motion: HandMotion | null): void {
    if (motion === null && this.#motion !== null) this.#return.letGo(this.#tilt);
    this.#motion = motion;
    this.#motionSeconds = 0;
  }

  pass(seconds: number): void {
    this.#lived += seconds;
    this.#motionSeconds += seconds;
    const target = this.#motion?.target(this.#motionSeconds) ?? null;
    if (target === null) {
      this.begin(null);
      this.#tilt = stopAtGate(this.#build.gate, this.#return.pass(seconds));
    } else {
      this.#tilt = stopAtGate(this.#build.gate, target);
    }
  }

  /** What bends the reading from now on, as a tilt. */
  bend(by: Pair): void {
    this.#bend = by;
  }

  /** What the two converters read now, as the pad's wiring brings it. */
  read(): Pair {
    const { swapped, inverted } = this.#build;
    const part = tiltOfPart(this.#build, { x: this.#tilt.x + this.#bend.x, y: this.#tilt.y + this.#bend.y });
    const x = convert(this.#build.x, part.x, this.#sensorChance, this.#lived);
    const y = convert(this.#build.y, part.y, this.#sensorChance, this.#lived);
    const wired = { x: inverted?.x === true ? ADC_MAXIMUM - x : x, y: inverted?.y === true ? ADC_MAXIMUM - y : y };
    return swapped === true ? { x: wired.y, y: wired.x } : wired;
  }
}
