/** Lets the hand of a simulated pad do what a survey asks for, after the moment that a person takes to begin. */
import type { StickId } from '../../core/pad/stick.ts';
import type { SimulatedHand } from '../../core/simulate/simulated-hand.ts';
import type { HandWish } from './capture-run.ts';
import type { Clock } from './clock.ts';

const BEGIN_MILLIS = 250;

export class HandFollower {
  readonly #hand: SimulatedHand;
  readonly #clock: Clock;
  #asked = -1;
  #cancel: () => void = () => undefined;

  constructor(hand: SimulatedHand, clock: Clock) {
    this.#hand = hand;
    this.#clock = clock;
  }

  /** `number` tells one wish from the next; the same one is carried out once. */
  ask(number: number, stick: StickId, wish: HandWish): void {
    if (number === this.#asked) return;
    this.#asked = number;
    this.#cancel();
    this.#cancel = this.#clock.after(BEGIN_MILLIS, () => this.#carryOut(stick, wish));
  }

  stop(): void {
    this.#cancel();
  }

  #carryOut(stick: StickId, wish: HandWish): void {
    if (wish.does === 'pushAndLetGo') this.#hand.pushAndLetGo(stick, wish.toward);
    else this.#hand.turn(stick, wish.turns, wish.way);
  }
}
