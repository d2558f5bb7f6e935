/** The bench's own memory desk over one pad, for the length of one command. */
import path from 'node:path';
import { kinshipOf, ownerOf } from '../../../core/pad/owner.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { ImageDesk } from '../../bench/image-desk.ts';
import { noLoopDelay } from '../../bench/loop-delay.ts';
import { MapShelf } from '../../bench/map-shelf.ts';
import type { MemoryDesk } from '../../bench/memory-desk.ts';
import { memoryParts } from '../../bench/memory-parts.ts';
import type { MemoryState } from '../../bench/memory-run.ts';
import { padKey } from '../../bench/pad-key.ts';
import { PadRack } from '../../bench/pad-rack.ts';
import { PlanBoard } from '../../bench/plan-board.ts';
import { SampleBoard } from '../../bench/sample-board.ts';
import type { VirtualClock } from '../../bench/virtual-clock.ts';
import { Confirmations } from '../../store/confirmations.ts';
import { findPlaces } from '../../store/places.ts';
import { Vault } from '../../store/vault.ts';
import { programVersion } from '../program-version.ts';
import { holdPad, type HeldPad, type MemoryChoice } from './memory-pad.ts';
import { memoryTeller } from './memory-progress.ts';
import { sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export const PAD = 'pad';

const INTERRUPTS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

export class MemoryBench {
  readonly rack: PadRack;
  readonly desk: MemoryDesk;
  readonly images: ImageDesk;
  readonly vault = new Vault(findPlaces().vault);
  readonly maps: MapShelf;
  readonly plans = new PlanBoard();
  readonly confirmations: Confirmations;
  readonly identity: HeldPad['source']['transport']['identity'];
  #ended: (state: MemoryState) => void = () => undefined;
  #isInterrupted = false;

  constructor(terminal: Terminal, { source, clock, virtual, lock }: HeldPad) {
    const folder = findPlaces().data;
    const now = (): Date => new Date();
    const say = memoryTeller(terminal, virtual === null);
    this.identity = source.transport.identity;
    this.rack = new PadRack({
      clock,
      board: new SampleBoard(),
      loopDelay: noLoopDelay,
      tellHealth: () => undefined,
      delayed: () => undefined,
      changed: () => undefined,
    });
    this.maps = new MapShelf(path.join(folder, 'maps'));
    // Here numbers come from patches and kept images alone.
    this.images = new ImageDesk(this.vault, this.maps, this.plans, now, {
      survey: () => Promise.resolve(failed('survey-unknown', 'No survey is planned from here; plan a patch first.')),
      kept: () => null,
    });
    this.confirmations = new Confirmations(path.join(folder, 'confirmations'), now);
    const { desk } = memoryParts({
      folder,
      version: programVersion,
      clock,
      rack: this.rack,
      registry: { padOf: (owner) => (kinshipOf(owner, ownerOf(this.identity, null)) === 'other' ? null : PAD) },
      lock,
      vault: this.vault,
      maps: this.maps,
      plans: this.plans,
      isCaptured: () => false,
      quiet: () => undefined,
      tell: (state) => {
        say(state);
        if (state.end !== null) this.#ended(state);
      },
      kept: () => undefined,
      noted: () => undefined,
    });
    this.desk = desk;
  }

  /** What the pad is remembered by. */
  get key(): string {
    return padKey(this.identity);
  }

  /** Plays a session to its end; one that failed is a problem. */
  async play(begin: () => Promise<Result<MemoryState>>): Promise<Result<MemoryState>> {
    if (this.#isInterrupted) return failed('memory-aborted', 'The command was ended on request.');
    const over = new Promise<MemoryState>((resolve) => (this.#ended = resolve));
    const begun = await begin();
    if (!begun.ok) return begun;
    const state = await over;
    return state.end === 'failed' && state.problem !== null ? { ok: false, problem: state.problem } : done(state);
  }

  /** The session under way ends, a write that was begun is rolled back, and no other begins. */
  interrupt(): void {
    this.#isInterrupted = true;
    this.desk.abort(PAD);
  }
}

/** Opens the pad, does the work and closes the pad, whatever comes of it. */
export async function atMemoryBench(
  terminal: Terminal,
  choice: MemoryChoice,
  work: (bench: MemoryBench) => Promise<ExitCode>,
): Promise<ExitCode> {
  const held = await holdPad(terminal, choice);
  if (!held.ok) return sayProblem(terminal, held.problem);
  const bench = new MemoryBench(terminal, held.value);
  const interrupt = (): void => bench.interrupt();
  for (const signal of INTERRUPTS) process.on(signal, interrupt);
  try {
    return await settle(held.value.virtual, openAndWork(terminal, bench, held.value, work));
  } finally {
    for (const signal of INTERRUPTS) process.off(signal, interrupt);
    await bench.rack.stop();
    await held.value.release();
  }
}

async function openAndWork(
  terminal: Terminal,
  bench: MemoryBench,
  { source }: HeldPad,
  work: (bench: MemoryBench) => Promise<ExitCode>,
): Promise<ExitCode> {
  const opened =
    source.problem === null ? await bench.rack.open(PAD, source) : failed(source.problem.code, source.problem.says);
  return opened.ok ? work(bench) : sayProblem(terminal, opened.problem);
}

/** Lets virtual time pass until the work is over. */
async function settle<T>(virtual: VirtualClock | null, work: Promise<T>): Promise<T> {
  let isOver = false;
  const ended = (): void => void (isOver = true);
  work.then(ended, ended);
  await virtual?.run(() => isOver);
  return work;
}
