/** The pad whose memory a command works with, held against every other program until the command ends. */
import path from 'node:path';
import type { PadIdentity } from '../../../core/pad/identity.ts';
import { done, failed, type Problem, type Result } from '../../../core/result.ts';
import { systemClock, type Clock } from '../../bench/time/clock.ts';
import { padKey } from '../../bench/pads/pad-key.ts';
import type { PadLock } from '../../bench/pads/pad-lock-port.ts';
import type { PadSource } from '../../bench/pads/pad-source.ts';
import { VirtualClock } from '../../bench/time/virtual-clock.ts';
import { createPadLock } from '../../store/pad-lock.ts';
import { findPlaces } from '../../store/places.ts';
import { keptDemo, keptDemoName } from '../../transport/kept-demo.ts';
import { choosePad } from './live-pad.ts';
import { lookForPads } from './real-pads.ts';
import type { Terminal } from './terminal.ts';

export interface MemoryChoice {
  readonly pad?: string;
  readonly demo?: string;
  /** A simulated pad takes as long as a real one would. */
  readonly realTime?: boolean;
}

export interface HeldPad {
  readonly source: PadSource;
  /** Moved on by the command itself; null where the pad lives by the machine's clock. */
  readonly virtual: VirtualClock | null;
  readonly clock: Clock;
  /** For each session of the command: the pad is held already, and what loses it ends the session. */
  readonly lock: PadLock;
  readonly release: () => Promise<void>;
}

/** A simulated pad keeps its memory in the data folder; a real one is locked by its path. */
export async function holdPad(terminal: Terminal, choice: MemoryChoice): Promise<Result<HeldPad>> {
  const held = new Hold();
  const lock = createPadLock();
  if (choice.demo === undefined) {
    const source = await choosePad(terminal, choice, systemClock);
    if (!source.ok) return source;
    const { identity, lockKey } = source.value.transport;
    const release =
      lockKey === undefined ? done(() => Promise.resolve()) : await lock.take(identity, lockKey, held.lost);
    return release.ok
      ? done({ source: source.value, virtual: null, clock: systemClock, lock: held, release: release.value })
      : release;
  }
  const demo = keptDemo(choice.demo, path.join(findPlaces().data, 'demos'));
  if (!demo.ok) return demo;
  // Locked before its memory is read: another program may be about to change that.
  const release = await lock.take(demo.value.identity, demo.value.file, held.lost);
  if (!release.ok) return release;
  const virtual = choice.realTime === true ? null : new VirtualClock(new Date());
  const clock = virtual === null ? systemClock : onDate(virtual);
  const source = await demo.value.plug(clock);
  if (source.ok) return done({ source: source.value, virtual, clock, lock: held, release: release.value });
  await release.value();
  return source;
}

/** Passes the loss of the command's own lock on to the session that runs, or to the next. */
class Hold implements PadLock {
  #problem: Problem | null = null;
  #hear: (problem: Problem) => void = () => undefined;

  readonly lost = (problem: Problem): void => {
    this.#problem = problem;
    this.#hear(problem);
  };

  take(...[, , lost]: Parameters<PadLock['take']>): Promise<Result<() => Promise<void>>> {
    if (this.#problem !== null) return Promise.resolve({ ok: false, problem: this.#problem });
    this.#hear = lost;
    return Promise.resolve(done(() => Promise.resolve()));
  }
}

/** The pad that a journal is of, where it is connected. */
export async function choicePadOf(identity: PadIdentity): Promise<Result<MemoryChoice>> {
  const demo = keptDemoName(identity);
  if (demo !== null) return done({ demo });
  const found = await lookForPads();
  if (!found.ok) return found;
  const pad = found.value.pads.find((one) => padKey(one.identity) === padKey(identity));
  if (pad !== undefined) return done({ pad: pad.path });
  return failed('pad-gone', `${identity.product}, which the journal is of, is not connected; plug it in.`);
}

/** Waits by virtual time, dates by the machine's: a journal says when it was really written. */
function onDate(virtual: VirtualClock): Clock {
  return {
    micros: () => virtual.micros(),
    now: () => new Date(),
    after: (millis, call) => virtual.after(millis, call),
  };
}
