/** Gathers the reports of one pad into batches for the screen, at most one every 16 ms; nobody listening costs nothing. */
import { SampleBatchWriter } from '../../shared/sample-batch.ts';
import type { Clock } from './clock.ts';
import type { SampleBoard } from './sample-board.ts';

const BATCH_MILLIS = 16;

export class PadStream {
  readonly #pad: string;
  readonly #clock: Clock;
  readonly #board: SampleBoard;
  readonly #writer: SampleBatchWriter;
  #firstAt = 0;
  #cancel: (() => void) | null = null;

  constructor(pad: string, clock: Clock, board: SampleBoard) {
    this.#pad = pad;
    this.#clock = clock;
    this.#board = board;
    this.#writer = new SampleBatchWriter(pad);
  }

  report(t: number, reportId: number, payload: Uint8Array): void {
    if (!this.#board.wanted) return;
    this.#begin(t);
    this.#writer.report(t, reportId, payload);
  }

  gap(t: number, lost: number | null): void {
    if (!this.#board.wanted) return;
    this.#begin(t);
    this.#writer.gap(t, lost);
  }

  /** Shows what was gathered and stops the timer. */
  flush(): void {
    this.#cancel?.();
    this.#cancel = null;
    const entries = this.#writer.entries;
    if (entries > 0) this.#board.show(this.#pad, this.#firstAt, this.#writer.take(), entries);
  }

  #begin(t: number): void {
    if (this.#writer.entries === 0) this.#firstAt = t;
    this.#cancel ??= this.#clock.after(BATCH_MILLIS, () => this.flush());
  }
}
