/** One memory session under way: its exchange with the pad, where it stands, what it ends with. */
import { isReply } from '../../../core/image/memory-command.ts';
import type { Steps } from '../../../core/image/memory-effects.ts';
import { newExchange, type Exchange } from '../../../core/image/memory-exchange.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import type { Problem } from '../../../core/result.ts';
import type { EventPayload } from '../../../shared/contract.ts';
import type { Clock } from '../time/clock.ts';
import { MemoryDriver, type DriverPorts } from './memory-driver.ts';
import type { PadSession } from '../pads/pad-session.ts';
import { Spacer } from '../time/spacer.ts';

export type MemoryState = EventPayload<'memory.state'>;

/** What a session ended with, for the screen. */
export type MemoryEnd = Pick<MemoryState, 'end' | 'image' | 'bytes' | 'problem'> & {
  readonly end: NonNullable<MemoryState['end']>;
};

export interface RunPorts extends Pick<DriverPorts, 'keep' | 'journal'> {
  readonly clock: Clock;
  readonly session: PadSession;
  readonly protocol: MemoryProtocol;
  readonly tell: (state: MemoryState) => void;
}

const TELL_MILLIS = 50;
/** Fewer commands say nothing of the speed. */
const TELLING_COMMANDS = 20;

const SAYS: Readonly<Record<MemoryState['step'], string>> = {
  identify: 'Asking the pad what it is.',
  read: 'Reading the memory.',
  keep: 'Keeping the image.',
  journal: 'Noting in the journal what is about to be written.',
  write: 'Writing, and reading each block back. Do not unplug the pad.',
  compare: 'Comparing the whole memory with the plan. Do not unplug the pad.',
  rollBack: 'Putting the old bytes back. Do not unplug the pad.',
  over: 'Over.',
};

const ENDS: Readonly<Record<NonNullable<MemoryState['end']>, string>> = {
  read: 'The memory was read twice and both readings agree.',
  before: 'The memory is as it was before.',
  after: 'The memory holds what was planned.',
  differs:
    'The memory is neither as it was nor as planned; the bytes that differ are listed, and a restore is offered.',
  failed: 'Nothing was written.',
};

export class MemoryRun {
  readonly #pad: string;
  readonly #doing: MemoryState['doing'];
  readonly #ports: RunPorts;
  readonly #exchange: Exchange;
  readonly #driver: MemoryDriver;
  readonly #spacer: Spacer;
  readonly #startMicros: number;
  #end: MemoryEnd | null = null;

  constructor(pad: string, doing: MemoryState['doing'], ports: RunPorts) {
    const { clock, session, protocol, keep, journal } = ports;
    this.#pad = pad;
    this.#doing = doing;
    this.#ports = ports;
    this.#exchange = newExchange(protocol);
    this.#spacer = new Spacer(clock, TELL_MILLIS, () => ports.tell(this.state));
    this.#startMicros = clock.micros();
    this.#driver = new MemoryDriver({
      clock,
      send: (reportId, payload) => session.source.transport.sendOutput(reportId, payload),
      keep,
      journal,
      moved: () => this.#spacer.call(),
    });
  }

  /** Bytes may be under way to the pad. */
  get isWriting(): boolean {
    return this.#end === null && this.#exchange.tally.writing;
  }

  /** What the pad told of itself that no other pad does. */
  get unit(): string | null {
    return this.#exchange.unit;
  }

  async play<T>(session: (exchange: Exchange) => Steps<T>): Promise<T> {
    const { protocol, session: pad } = this.#ports;
    const release = pad.divert({
      isTheirs: (reportId, payload) => isReply(protocol, reportId, payload),
      hear: (payload) => this.#driver.reply(payload),
      lost: (problem) => this.#driver.lost(problem),
    });
    try {
      return await this.#driver.run(session(this.#exchange));
    } finally {
      release();
    }
  }

  abort(): void {
    this.#driver.abort();
  }

  /** The pad is another program's from now on: nothing more is sent to it, not even to roll back. */
  lost(problem: Problem): void {
    this.#driver.lost(problem);
  }

  /** Told at once, and the last of it. */
  finish(end: MemoryEnd): void {
    this.#end = end;
    this.#spacer.last();
  }

  get state(): MemoryState {
    const { tally } = this.#exchange;
    const end = this.#end;
    const step = end === null ? tally.step : 'over';
    return {
      pad: this.#pad,
      doing: this.#doing,
      step,
      says: end === null ? SAYS[step] : sayEnd(end, tally.writing),
      done: tally.done,
      of: Math.max(tally.of, tally.done),
      secondsLeft: end === null ? this.#secondsLeft() : null,
      retries: tally.retries,
      writing: this.isWriting,
      end: end?.end ?? null,
      image: end?.image ?? null,
      bytes: end?.bytes ?? [],
      problem: end?.problem ?? null,
    };
  }

  #secondsLeft(): number | null {
    const { done, of } = this.#exchange.tally;
    if (done < TELLING_COMMANDS) return null;
    const seconds = (this.#ports.clock.micros() - this.#startMicros) / 1e6;
    return (seconds / done) * Math.max(0, of - done);
  }
}

/** A session of ours that wrote nothing offers no restore; one that broke inside the program while it wrote knows nothing. */
function sayEnd({ end, problem }: MemoryEnd, wasWriting: boolean): string {
  if (end === 'differs' && problem?.code === 'memory-changed')
    return 'Nothing was written: the memory is no longer what the plan was made for, and the bytes that differ are listed.';
  if (end === 'failed' && wasWriting) return 'What stands in the memory is not known; look at what the write left.';
  return ENDS[end];
}
