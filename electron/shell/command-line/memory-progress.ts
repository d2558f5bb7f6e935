/** How far a memory session is, on standard error: each step by its words, a long one by quarters. */
import type { EventPayload } from '../../../shared/contract.ts';
import type { Terminal } from './terminal.ts';

export type MemoryState = EventPayload<'memory.state'>;

/** `isTimed`: the time left means something, for the pad lives by the machine's clock. */
export function memoryTeller(terminal: Terminal, isTimed: boolean): (state: MemoryState) => void {
  let step: MemoryState['step'] | null = null;
  let quarter = 0;
  return ({ step: now, says, done, of, secondsLeft, end }) => {
    if (end !== null) {
      step = null;
      return;
    }
    const reached = of === 0 ? 0 : Math.floor((4 * done) / of);
    if (now !== step) terminal.say(says);
    else if (reached > quarter) terminal.say(`${String(25 * reached)} %${leftText(isTimed ? secondsLeft : null)}`);
    step = now;
    quarter = reached;
  };
}

function leftText(seconds: number | null): string {
  return seconds === null ? '' : `, about ${String(Math.ceil(seconds))} s left`;
}
