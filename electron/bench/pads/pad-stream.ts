/** Gathers the reports of one pad into batches for the screen, at most one every 16 ms; nobody listening costs nothing. */
import { SampleBatchWriter } from '../../../shared/sample-batch.ts';
import type { Clock } from '../time/clock.ts';
import type { SampleFeed } from './sample-feed.ts';

const BATCH_MILLIS = 16;

export class PadStream {
  readonly #pad: string;
  readonly #clock: Clock;
  readonly #feed: SampleFeed;
  readonly #writer: SampleBatchWriter;
  #firstAt = 0;
  #cancel: (() => void) | null = null;

  constructor(pad: string, clock: Clock, feed: SampleFeed) {
    this.#pad = pad;
    this.#clock = clock;
    this.#feed = feed;
    this.#writer = new SampleBatchWriter(pad);
  }

  report(t: number, reportId: number, payload: Uint8Array): void {
    if (!this.#feed.wanted) return;
    this.#begin(t);
    this.#writer.report(t, reportId, payload);
  }

  gap(t: number, lost: number | null): void {
    if (!this.#feed.wanted) return;
    this.#begin(t);
    this.#writer.gap(t, lost);
  }

  /** Shows what was gathered and stops the timer. */
  flush(): void {
    this.#cancel?.();
    this.#cancel = null;
    const entries = this.#writer.entries;
    if (entries > 0) this.#feed.show(this.#pad, this.#firstAt, this.#writer.take(), entries);
  }

  #begin(t: number): void {
    if (this.#writer.entries === 0) this.#firstAt = t;
    this.#cancel ??= this.#clock.after(BATCH_MILLIS, () => this.flush());
  }
}
