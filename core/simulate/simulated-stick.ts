/** One stick of a simulated pad: the tilt of the part, held by a hand or free, and what its sensors make of it. */
import type { Pair } from '../pad/stick.ts';
import type { StickBuild } from './build.ts';
import { createChance, type Chance } from './chance.ts';
import { stopAtGate } from './gate.ts';
import type { HandMotion } from './hand-motion.ts';
import { convert, tiltOfPart } from './sensor.ts';
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
    this.#motionSeconds += seconds;
    const target = this.#motion?.target(this.#motionSeconds) ?? null;
    if (target === null) {
      this.begin(null);
      this.#tilt = stopAtGate(this.#build.gate, this.#return.pass(seconds));
    } else {
      this.#tilt = stopAtGate(this.#build.gate, target);
    }
  }

  /** What the two converters read now. */
  read(): Pair {
    const part = tiltOfPart(this.#build, this.#tilt);
    return {
      x: convert(this.#build.x, part.x, this.#sensorChance),
      y: convert(this.#build.y, part.y, this.#sensorChance),
    };
  }
}
