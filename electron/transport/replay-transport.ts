/** A report log as a transport: its reports come again as they came, at their own pace or as fast as they can be heard. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import { sayDamaged } from '../../core/log/damaged-lines.ts';
import type { LogHeader } from '../../core/log/header.ts';
import type { PadIdentity } from '../../core/pad/identity.ts';
import { readHex } from '../../core/hid/hex.ts';
import { done, failed, type Problem, type Result } from '../../core/result.ts';
import type { Clock } from '../bench/time/clock.ts';
import { readLogHeader, readLogPieces, type LogPiece, type LogEntry } from '../store/log-entries.ts';
import type { Transport, TransportListener } from '../bench/pads/transport.ts';

/** How many times as fast as it was recorded; `unpaced` waits for nothing. */
export type ReplayPace = number | 'unpaced';

const BATCH_MILLIS = 4;
/** Reports that follow each other without letting anything else of the program go on. */
const UNPACED_BATCH = 4096;

/** Reads the log's header; fails where there is none to be read. */
export async function openReplay(file: string, clock: Clock, pace: ReplayPace): Promise<Result<ReplayTransport>> {
  const header = await readLogHeader(file);
  if (!header.ok) return header;
  const descriptor = header.value.descriptor === null ? done(null) : readHex(header.value.descriptor);
  return descriptor.ok ? done(new ReplayTransport(file, header.value, descriptor.value, clock, pace)) : descriptor;
}

/**
 * Stamps keep the log's own intervals, whatever the pace: report time = time of opening + time in the log. After the
 * last entry the pad is `lost` with `replay-ended`; opened again, the log begins anew.
 */
export class ReplayTransport implements Transport {
  readonly key: string;
  readonly identity: PadIdentity;
  readonly descriptor: Uint8Array | null;
  readonly header: LogHeader;
  readonly #file: string;
  readonly #clock: Clock;
  readonly #pace: ReplayPace;
  #stop: AbortController | null = null;
  #playing: Promise<void> = Promise.resolve();

  constructor(file: string, header: LogHeader, descriptor: Uint8Array | null, clock: Clock, pace: ReplayPace) {
    this.key = `replay:${file}`;
    this.header = header;
    this.identity = header.pad;
    this.descriptor = descriptor;
    this.#file = file;
    this.#clock = clock;
    this.#pace = pace;
  }

  open(listener: TransportListener): Promise<Result<void>> {
    if (this.#stop !== null)
      return Promise.resolve(failed('pad-busy', 'This report log is being replayed already; close it first.'));
    this.#stop = new AbortController();
    this.#playing = this.#play(listener, this.#stop.signal);
    return Promise.resolve(done(undefined));
  }

  sendOutput(): Promise<Result<void>> {
    return Promise.resolve(cannotBeAsked());
  }

  sendFeature(): Promise<Result<void>> {
    return Promise.resolve(cannotBeAsked());
  }

  readFeature(): Promise<Result<Uint8Array>> {
    return Promise.resolve(cannotBeAsked());
  }

  async close(): Promise<void> {
    this.#stop?.abort();
    this.#stop = null;
    await this.#playing;
  }

  async #play(listener: TransportListener, stop: AbortSignal): Promise<void> {
    const began = this.#clock.micros();
    const stopped = (): boolean => stop.aborted;
    for await (const piece of readLogPieces(this.#file)) {
      if (stopped()) return;
      if (piece.kind !== 'entries') {
        this.#stop = null;
        listener.lost(lastWord(piece));
        return;
      }
      for (let next = 0; next < piece.entries.length && !stopped();) {
        const dueBy = this.#pace === 'unpaced' ? null : (this.#clock.micros() - began) * this.#pace;
        next = tellUntil(piece.entries, next, dueBy, began, listener, stop);
        await this.#pause(piece.entries[next], dueBy, stop);
      }
    }
  }

  /** Until the next entry is due, for a few milliseconds at least; unpaced for one turn of the event loop. */
  async #pause(next: LogEntry | undefined, dueBy: number | null, stop: AbortSignal): Promise<void> {
    if (next === undefined || stop.aborted) return;
    if (dueBy === null || this.#pace === 'unpaced') {
      await nextTurn();
      return;
    }
    const millis = Math.max(BATCH_MILLIS, (next.t - dueBy) / this.#pace / 1000);
    await new Promise<void>((resolve) => {
      const finish = (): void => {
        cancel();
        stop.removeEventListener('abort', finish);
        resolve();
      };
      const cancel = this.#clock.after(millis, finish);
      stop.addEventListener('abort', finish);
    });
  }
}

/** Tells the entries that are due, or so many without a pace; answers with the index of the first that was not. */
function tellUntil(
  entries: readonly LogEntry[],
  from: number,
  dueBy: number | null,
  began: number,
  listener: TransportListener,
  stop: AbortSignal,
): number {
  let next = from;
  for (; next < entries.length && !stop.aborted; next += 1) {
    const entry = entries[next];
    if (entry === undefined || (dueBy === null ? next - from >= UNPACED_BATCH : entry.t > dueBy)) break;
    if (entry.payload === null) listener.gap(began + entry.t, entry.lost);
    else listener.report(began + entry.t, entry.reportId, entry.payload);
  }
  return next;
}

function lastWord(piece: Exclude<LogPiece, { kind: 'entries' }>): Problem {
  if (piece.kind === 'problem') return piece.problem;
  const cut = piece.cut ? ' Its last line was cut off and is left out.' : '';
  const damaged = sayDamaged(piece.damaged);
  return {
    code: 'replay-ended',
    says: `The report log has been replayed to its end; open it again to see it once more.${cut}${damaged === null ? '' : ` ${damaged}`}`,
  };
}

function cannotBeAsked(): ReturnType<typeof failed> {
  return failed('pad-protocol', 'A replayed report log answers no questions; use a real pad for them.');
}
