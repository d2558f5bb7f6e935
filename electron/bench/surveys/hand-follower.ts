/** Lets the hand of a simulated pad do what a survey asks for, after the moment that a person takes to begin. */
import type { Disturbance } from '../../../core/capture/evidence/disturbance.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import type { SimulatedHand } from '../../../core/simulate/simulated-hand.ts';
import type { HandWish } from './captures/capture-run.ts';
import type { Clock } from '../time/clock.ts';

const BEGIN_MILLIS = 250;
/** Between two controls a finger is quicker than a hand. */
const PRESS_MILLIS = 60;
const HELD_MILLIS = 150;
const CLICK_MILLIS = 1200;
/** A hand that nothing came of for so long gives the capture up: the pad cannot do what is asked. */
const PATIENCE_MILLIS = 60_000;

/** What goes on beside a stick that is measured. */
interface Beside {
  readonly of: Disturbance;
  readonly stick: StickId;
}

export class HandFollower {
  readonly #hand: SimulatedHand;
  readonly #clock: Clock;
  #asked = '';
  #cancel: () => void = () => undefined;
  #during: Beside | null = null;
  #taken = -1;
  #takenMicros = 0;

  constructor(hand: SimulatedHand, clock: Clock) {
    this.#hand = hand;
    this.#clock = clock;
  }

  /** `number` tells one wish from the next; the same one is carried out once. */
  ask(number: number, stick: StickId | null, wish: HandWish): void {
    const key = 'turn' in wish ? `control ${wish.turn}` : `prompt ${number}`;
    if (key === this.#asked) return;
    this.#asked = key;
    this.#cancel();
    const millis = 'turn' in wish ? PRESS_MILLIS : BEGIN_MILLIS;
    this.#cancel = this.#clock.after(millis, () => this.#carryOut(stick, wish));
  }

  /** Answers whether the hand gives up: nothing more was taken for long. */
  isTired(taken: number): boolean {
    if (taken !== this.#taken) {
      this.#taken = taken;
      this.#takenMicros = this.#clock.micros();
    }
    return this.#clock.micros() - this.#takenMicros > PATIENCE_MILLIS * 1000;
  }

  /** A capture is over: nothing of it goes on, and the stick is let go. */
  stop(stick: StickId | null): void {
    this.#cancel();
    if (stick !== null) this.#hand.letGo(stick);
    this.#asked = '';
    this.#taken = -1;
    this.#keepUp(null);
  }

  #carryOut(stick: StickId | null, wish: HandWish): void {
    if (wish.does === 'press') this.#hand.press(wish.button);
    else if (wish.does === 'pressHat') {
      this.#hand.pressHat(wish.degrees);
      this.#letGoLater(() => this.#hand.pressHat(null));
    } else if (wish.does === 'pull') {
      this.#hand.pull(wish.trigger, 1);
      this.#letGoLater(() => this.#hand.pull(wish.trigger, 0));
    } else if (stick !== null) this.#move(stick, wish);
  }

  #move(stick: StickId, wish: Exclude<HandWish, { turn: number }>): void {
    if (wish.does === 'holdClick') this.#hand.press(wish.button, CLICK_MILLIS);
    else if (wish.does === 'turn') this.#hand.turn(stick, wish.turns, wish.way);
    else if (wish.does === 'pushAndLetGo') {
      this.#keepUp(wish.during === undefined ? null : { of: wish.during, stick });
      this.#hand.pushAndLetGo(stick, wish.toward);
    } else this.#hand[wish.does](stick, wish.toward);
  }

  #letGoLater(letGo: () => void): void {
    this.#clock.after(HELD_MILLIS, letGo);
  }

  /** Begins what is to go on beside the stick, and ends what went on before. */
  #keepUp(during: Beside | null): void {
    const before = this.#during;
    if (before?.of === during?.of && before?.stick === during?.stick) return;
    this.#during = during;
    if (before !== null) this.#disturb(before, false);
    if (during !== null) this.#disturb(during, true);
  }

  #disturb({ of, stick }: Beside, on: boolean): void {
    const other = stick === 'left' ? 'right' : 'left';
    if (of === 'rumble' || of === 'charger' || of === 'shell') this.#hand.disturb(of, on);
    else if (of === 'other-stick' && on) this.#hand.pushAndHold(other, 90);
    else if (of === 'other-stick') this.#hand.letGo(other);
  }
}
