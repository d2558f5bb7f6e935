/** Opens the one pad that a command is to work with: by its path, a simulated one by its name, else the first there is. */
import { done, failed, type Result } from '../../../core/result.ts';
import { systemClock, type Clock } from '../../bench/clock.ts';
import { PadSession } from '../../bench/pad-session.ts';
import type { PadSource } from '../../bench/pad-source.ts';
import { PadStream } from '../../bench/pad-stream.ts';
import { SampleBoard } from '../../bench/sample-board.ts';
import { createDemoPlug } from '../../transport/plug-demo.ts';
import { lookForPads } from './real-pads.ts';
import type { Terminal } from './terminal.ts';

export interface PadChoice {
  readonly pad?: string;
  readonly demo?: string;
  readonly seed?: number;
}

/** What a simulated pad is drawn from where nothing else is said. */
const FIRST_SEED = 1;

export async function choosePad(terminal: Terminal, choice: PadChoice, clock: Clock): Promise<Result<PadSource>> {
  if (choice.demo !== undefined) return createDemoPlug(clock, choice.seed ?? FIRST_SEED)(choice.demo, 'demo');
  const found = await lookForPads();
  if (!found.ok) return found;
  const { pads, transport } = found.value;
  const pad = choice.pad === undefined ? pads[0] : pads.find(({ path }) => path === choice.pad);
  if (pad !== undefined) {
    if (choice.pad === undefined) terminal.say(`Reading ${pad.identity.product} at ${pad.path}.`);
    return done({ transport: transport(pad), problem: pad.problem, rule: pad.rule, hand: null });
  }
  const says =
    choice.pad === undefined
      ? 'No pad is connected; plug one in, or give --demo healthy for a simulated one.'
      : `There is no pad at ${choice.pad}; \`stickwright pads\` lists those there are.`;
  return failed('pad-gone', says);
}

/** A session that is streaming, and what ends it. */
export async function openLivePad(
  terminal: Terminal,
  choice: PadChoice,
): Promise<Result<{ session: PadSession; close: () => Promise<void> }>> {
  const source = await choosePad(terminal, choice, systemClock);
  if (!source.ok) return source;
  const stream = new PadStream('pad', systemClock, new SampleBoard());
  const session = new PadSession('pad', source.value, { clock: systemClock, stream, changed: () => undefined });
  const opened = await session.open();
  if (!opened.ok) return opened;
  if (source.value.hand !== null) {
    source.value.hand.does('left', 'wander');
    source.value.hand.does('right', 'wander');
  }
  return done({ session, close: () => session.close() });
}
