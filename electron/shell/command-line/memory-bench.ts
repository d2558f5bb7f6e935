/** The bench and the one pad of a command, for as long as that takes. */
import type { PadIdentity } from '../../../core/pad/identity.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { CallName, Reply, Request } from '../../../shared/contract.ts';
import type { Bench } from '../../bench/calls/bench-port.ts';
import { padKey } from '../../bench/pads/pad-key.ts';
import type { VirtualClock } from '../../bench/time/virtual-clock.ts';
import { atBench } from './command-bench.ts';
import { holdPad, type HeldPad, type MemoryChoice } from './memory-pad.ts';
import { memoryTeller, type MemoryState } from './memory-progress.ts';
import { sayProblem, type ExitCode, type Terminal } from './terminal.ts';

const INTERRUPTS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

export class MemoryBench {
  readonly pad: string;
  readonly identity: PadIdentity;
  readonly #bench: Bench;
  readonly #virtual: VirtualClock | null;
  #ended: (state: MemoryState) => void = () => undefined;
  #isInterrupted = false;

  constructor(
    bench: Bench,
    { pad, identity }: Pick<Reply<'pads.list'>[number], 'pad' | 'identity'>,
    virtual: VirtualClock | null,
    say: (state: MemoryState) => void,
  ) {
    this.#bench = bench;
    this.#virtual = virtual;
    this.pad = pad;
    this.identity = identity;
    bench.listen('memory.state', (state) => {
      say(state);
      if (state.end !== null) this.#ended(state);
    });
  }

  /** What the pad is remembered by. */
  get key(): string {
    return padKey(this.identity);
  }

  handle<N extends CallName>(name: N, request: Request<N>): Promise<Result<Reply<N>>> {
    return this.#bench.handle(name, request);
  }

  /** Plays a session to its end; one that failed is a problem. */
  async play(begin: () => Promise<Result<MemoryState>>): Promise<Result<MemoryState>> {
    if (this.#isInterrupted) return failed('memory-aborted', 'The command was ended on request.');
    const over = new Promise<MemoryState>((resolve) => (this.#ended = resolve));
    const begun = await begin();
    if (!begun.ok) return begun;
    const state = await settle(this.#virtual, over);
    return state.end === 'failed' && state.problem !== null ? { ok: false, problem: state.problem } : done(state);
  }

  /** The session under way ends, a write that was begun is rolled back, and no other begins. */
  interrupt(): void {
    this.#isInterrupted = true;
    void this.handle('memory.abort', { pad: this.pad });
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
  try {
    return await atPad(terminal, held.value, work);
  } finally {
    await held.value.release();
  }
}

function atPad(
  terminal: Terminal,
  { source, virtual, ...parts }: HeldPad,
  work: (bench: MemoryBench) => Promise<ExitCode>,
): Promise<ExitCode> {
  if (source.problem !== null) return Promise.resolve(sayProblem(terminal, source.problem));
  return atBench(parts, [source], async (service) => {
    const pads = await service.handle('pads.list', {});
    if (!pads.ok) return sayProblem(terminal, pads.problem);
    const [only] = pads.value;
    if (only === undefined) return sayProblem(terminal, padGone().problem);
    const bench = new MemoryBench(service, only, virtual, memoryTeller(terminal, virtual === null));
    const interrupt = (): void => bench.interrupt();
    for (const signal of INTERRUPTS) process.on(signal, interrupt);
    try {
      const opened = await settle(virtual, service.handle('pads.open', { pad: only.pad }));
      return opened.ok ? await work(bench) : sayProblem(terminal, opened.problem);
    } finally {
      // A session that the work left is ended here, in the pad's own time.
      await settle(virtual, service.handle('pads.close', { pad: only.pad }));
      for (const signal of INTERRUPTS) process.off(signal, interrupt);
    }
  });
}

/** Lets virtual time pass until the pad's work is over: what the disk takes beside it must not make a confirmation old. */
async function settle<T>(virtual: VirtualClock | null, work: Promise<T>): Promise<T> {
  let isOver = false;
  const ended = (): void => void (isOver = true);
  work.then(ended, ended);
  await virtual?.run(() => isOver);
  return work;
}

function padGone(): ReturnType<typeof failed> {
  return failed('pad-gone', 'The pad is no longer there; plug it in again.');
}
