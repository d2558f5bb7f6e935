/** One stick of a pad from its tilt to the two counts of a report. */
import { Chance } from './chance.ts';
import { countsOf, rounded, voltsOf } from './converter.ts';
import { reportedOf } from './firmware.ts';
import { Noise } from './noise.ts';
import type { PadPlan } from './pad-plan.ts';
import type { Part } from './part.ts';
import type { Vec } from './plane.ts';
import { sensedAt } from './sensor-law.ts';
import { Stick } from './stick.ts';
import type { StoredNumbers } from './stored-numbers.ts';
import { Wiring } from './wiring.ts';

const CODES_OF_NOISE = 4096;

/** Where the thumb leads it at a time in seconds; null where it is let go. */
export type Drive = (t: number) => Vec | null;

export class OneStick {
  readonly stick: Stick;
  readonly #part: Part;
  readonly #plan: PadPlan;
  readonly #stored: StoredNumbers;
  readonly #wiring: Wiring;
  readonly #noise: { readonly x: Noise; readonly y: Noise };
  #last = 0;

  constructor(plan: PadPlan, part: Part, stored: StoredNumbers, seed: number, name: string) {
    this.#plan = plan;
    this.#part = part;
    this.#stored = stored;
    this.stick = new Stick(part, new Chance(seed, `stick ${name}`));
    this.#wiring = new Wiring(part, new Chance(seed, `wiring ${name}`));
    const chance = new Chance(seed, `noise ${name}`);
    this.#noise = { x: new Noise(part.noise, chance), y: new Noise(part.noise, chance) };
  }

  /** The counts that its fields carry at this time. */
  counts(t: number, drive: Drive): Vec {
    const wanted = drive(t);
    if (wanted === null) {
      this.stick.letGo(this.#last);
      this.stick.swing(t);
    } else this.stick.hold(wanted);
    const sensed = sensedAt(this.#part, this.stick.place);
    const volts = this.#wiring.carry(t, this.stick.place, sensed, voltsOf(this.#part, sensed));
    const passed = t - this.#last;
    this.#last = t;
    const noisy = {
      x: volts.x + this.#noise.x.after(passed) / CODES_OF_NOISE,
      y: volts.y + this.#noise.y.after(passed) / CODES_OF_NOISE,
    };
    const counts = rounded(this.#plan, countsOf(this.#plan, noisy));
    return this.#plan.domain === 'sensor' ? counts : reportedOf(this.#plan, this.#stored, counts);
  }
}
