/** The two hands on a simulated pad: what they do begins at the time the pad has lived to. */
import type { Pair, StickId } from '../pad/stick.ts';
import type { Disturbance } from './build.ts';
import { flick, push, sweep, turn, wander, type TurnWay } from './hand-motion.ts';
import type { SimulatedStick } from './simulated-stick.ts';

/** What a hand can be told to keep doing. */
export type HandHabit = 'rest' | 'circle' | 'wander';

/** The buttons that click a stick in. */
export const CLICKS: Readonly<Record<StickId, number>> = { left: 11, right: 12 };

/** Value of the hat field with nothing pressed: outside of its 0 … 7. */
const HAT_FREE = 8;

export class SimulatedHand {
  readonly triggers: Record<StickId, number> = { left: 0, right: 0 };
  readonly #sticks: Readonly<Record<StickId, SimulatedStick>>;
  /** Seconds that each pressed button stays down. */
  readonly #pressed = new Map<number, number>();
  readonly #disturbing = new Set<Disturbance>();
  #hat = HAT_FREE;

  constructor(sticks: Readonly<Record<StickId, SimulatedStick>>) {
    this.#sticks = sticks;
  }

  /** Leaves the stick alone, turns it along the gate without end, or plays about with it. */
  does(stick: StickId, habit: HandHabit): void {
    const { tilt, handChance } = this.#sticks[stick];
    if (habit === 'rest') this.#sticks[stick].begin(null);
    else if (habit === 'circle')
      this.#sticks[stick].begin(turn(tilt, Number.POSITIVE_INFINITY, 'counterClockwise', handChance));
    else this.#sticks[stick].begin(wander(tilt, handChance));
  }

  /** Pushes to the gate toward an angle (degrees counter-clockwise from +x), holds for some tenths of a second, lets go. */
  pushAndLetGo(stick: StickId, towardDegrees: number): void {
    const { tilt, handChance } = this.#sticks[stick];
    this.#sticks[stick].begin(push(tilt, towardDegrees, handChance, 'letGo'));
  }

  /** Pushes to the gate toward an angle and holds on until told otherwise. */
  pushAndHold(stick: StickId, towardDegrees: number): void {
    const { tilt, handChance } = this.#sticks[stick];
    this.#sticks[stick].begin(push(tilt, towardDegrees, handChance, 'holdOn'));
  }

  letGo(stick: StickId): void {
    this.#sticks[stick].begin(null);
  }

  /** Turns along the gate at some 1.5 seconds a turn, a little more than asked for, and lets go. */
  turn(stick: StickId, turns: number, way: TurnWay): void {
    const { tilt, handChance } = this.#sticks[stick];
    this.#sticks[stick].begin(turn(tilt, turns, way, handChance));
  }

  /** Sweeps slowly from the gate opposite through the rest to the gate at an angle, holds a moment and lets go: some 4 s in all. */
  sweep(stick: StickId, towardDegrees: number): void {
    const { tilt, handChance } = this.#sticks[stick];
    this.#sticks[stick].begin(sweep(tilt, towardDegrees, handChance));
  }

  /** Pushes to full tilt toward an angle, holds shortly and lets go all at once. */
  flick(stick: StickId, towardDegrees: number): void {
    const { tilt, handChance } = this.#sticks[stick];
    this.#sticks[stick].begin(flick(tilt, towardDegrees, handChance));
  }

  /** Presses a button (1 … 16) for so long. */
  press(button: number, millis = 120): void {
    this.#pressed.set(button, millis / 1000);
  }

  /** Pulls a trigger: 0 is free, 1 all the way. */
  pull(trigger: StickId, amount: number): void {
    this.triggers[trigger] = Math.min(1, Math.max(0, amount));
  }

  /** Presses the hat toward an angle clockwise from up, in steps of 45°; null lets go. */
  pressHat(degrees: number | null): void {
    this.#hat = degrees === null ? HAT_FREE : ((Math.round(degrees / 45) % 8) + 8) % 8;
  }

  /** Begins or ends a disturbance of the whole pad. */
  disturb(of: 'rumble' | 'charger' | 'shell', on: boolean): void {
    if (on) this.#disturbing.add(of);
    else this.#disturbing.delete(of);
  }

  /** How much of a disturbance meets a stick now: 0 none, 1 all of it. */
  disturbs(stick: StickId, of: Disturbance): number {
    if (of === 'click') return Number(this.#pressed.has(CLICKS[stick]));
    if (of !== 'other-stick') return Number(this.#disturbing.has(of));
    const { x, y } = this.#sticks[stick === 'left' ? 'right' : 'left'].tilt;
    return Math.min(1, Math.sqrt(x * x + y * y));
  }

  /** A hand is on the stick: what it was told to do is not over. */
  holds(stick: StickId): boolean {
    return this.#sticks[stick].held;
  }

  /** Where the stick really stands: what no report says. */
  tilt(stick: StickId): Pair {
    return this.#sticks[stick].tilt;
  }

  /** The hat's value in a report: 0 … 7 clockwise from up, or 8. */
  get hat(): number {
    return this.#hat;
  }

  /** Bit n − 1 is button n. */
  get buttons(): number {
    let bits = 0;
    for (const button of this.#pressed.keys()) bits |= 1 << (button - 1);
    return bits;
  }

  pass(seconds: number): void {
    for (const [button, left] of this.#pressed) {
      if (left > seconds) this.#pressed.set(button, left - seconds);
      else this.#pressed.delete(button);
    }
  }
}
