/** Opens the one pad that a command is to work with: by its path, a simulated one by its name, else the first there is. */
import path from 'node:path';
import { done, failed, type Result } from '../../../core/result.ts';
import { systemClock, type Clock } from '../../bench/time/clock.ts';
import { PadSession } from '../../bench/pads/pad-session.ts';
import type { PadSource } from '../../bench/pads/pad-source.ts';
import { PadStream } from '../../bench/pads/pad-stream.ts';
import { SampleFeed } from '../../bench/pads/sample-feed.ts';
import { findPlaces } from '../../store/places.ts';
import { keptDemo } from '../../transport/kept-demo.ts';
import { createDemoPlug } from '../../transport/plug-demo.ts';
import { lookForPads } from './real-pads.ts';
import type { Terminal } from './terminal.ts';

export interface PadChoice {
  readonly pad?: string;
  readonly demo?: string;
  readonly seed?: number;
}

export async function choosePad(terminal: Terminal, choice: PadChoice, clock: Clock): Promise<Result<PadSource>> {
  if (choice.demo !== undefined) return plugDemo(choice.demo, choice.seed, clock);
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

/** With a seed a pad of its own, made anew; else the one whose memory is kept: what is surveyed is what is written to. */
async function plugDemo(name: string, seed: number | undefined, clock: Clock): Promise<Result<PadSource>> {
  if (seed !== undefined) return createDemoPlug(clock, seed)(name, 'demo');
  const kept = keptDemo(name, path.join(findPlaces().data, 'demos'));
  return kept.ok ? kept.value.plug(clock) : kept;
}

/** A session that is streaming, and what ends it. */
export async function openLivePad(
  terminal: Terminal,
  choice: PadChoice,
): Promise<Result<{ session: PadSession; close: () => Promise<void> }>> {
  const source = await choosePad(terminal, choice, systemClock);
  if (!source.ok) return source;
  const stream = new PadStream('pad', systemClock, new SampleFeed());
  const session = new PadSession('pad', source.value, { clock: systemClock, stream, changed: () => undefined });
  const opened = await session.open();
  if (!opened.ok) return opened;
  if (source.value.hand !== null) {
    source.value.hand.does('left', 'wander');
    source.value.hand.does('right', 'wander');
  }
  return done({ session, close: () => session.close() });
}
