/** Every button, hat direction and trigger of the pad, once. */
import type { Bench } from './bench.ts';
import type { Chance } from './chance.ts';
import { gently, type Hand } from './hand.ts';

const BUTTONS = 16;
const DIRECTIONS = 8;
const NO_HAT = 8;
const PULL_SECONDS = 0.35;
const STEPS = 30;

export function pressInputs(bench: Bench, hand: Hand, chance: Chance): void {
  const { pad } = bench;
  for (let button = 1; button <= BUTTONS; button += 1) {
    pad.buttons.add(button);
    bench.leave(chance.between(0.08, 0.16));
    pad.buttons.delete(button);
    bench.leave(hand.around(0.15));
  }
  for (let direction = 0; direction < DIRECTIONS; direction += 1) {
    pad.hat = direction;
    bench.leave(chance.between(0.1, 0.2));
    pad.hat = NO_HAT;
    bench.leave(hand.around(0.15));
  }
  for (const side of ['left', 'right'] as const) {
    const pull = (shareAt: (step: number) => number): void => {
      for (let step = 1; step <= STEPS; step += 1) {
        pad.pulled[side] = gently(shareAt(step / STEPS));
        bench.leave(PULL_SECONDS / STEPS);
      }
    };
    pull((step) => step);
    bench.leave(hand.around(0.3));
    pull((step) => 1 - step);
    bench.leave(hand.around(0.4));
  }
}
