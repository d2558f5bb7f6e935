/**
 * The live readings of the pad in hand: decoded as they arrive, kept in typed rings, never in reactive state. Views look
 * at it at most once a frame; the newest reading wins, and `version` tells whether there is anything new to draw.
 */
import type { ByArrival } from '../../core/pad/by-arrival.ts';
import type { ReadingDecoder } from '../../core/pad/decode-reading.ts';
import type { PadLayout, ReadingSlot } from '../../core/pad/layout.ts';
import type { Problem } from '../../core/result.ts';
import type { BatchVisitor } from '../../shared/sample-batch.ts';
import { ControlWatch } from './control-watch.ts';
import { Extents } from './extents.ts';
import { ReadingRing } from './reading-ring.ts';

/** Twenty seconds at 1 000 readings a second. */
const CAPACITY = 20_000;
export const GAPS_KEPT = 256;

/** How reports are read, as far as the reports that came so far tell. */
export interface PadReader {
  readonly layout: PadLayout;
  readonly decoder: ReadingDecoder;
}

export class LiveReadings implements BatchVisitor {
  readonly ring = new ReadingRing(CAPACITY);
  readonly extents = new Extents();
  controls: ControlWatch;
  /** Times of the last gaps in µs of the bench's clock, oldest first. */
  readonly gaps: number[] = [];
  /** Grows with every reading or gap. */
  version = 0;
  /** What was wrong with the last report that could not be decoded. */
  problem: Problem | null = null;
  /** This window's clock in ms when the last batch came; NaN before the first. */
  arrivedMillis = Number.NaN;
  readonly #readers: ByArrival<PadReader>;
  #reader: PadReader;
  readonly #slot: ReadingSlot;

  constructor(readers: ByArrival<PadReader>, slot: ReadingSlot) {
    this.#readers = readers;
    this.#reader = readers.now;
    this.#slot = slot;
    this.controls = new ControlWatch(this.layout);
  }

  /** As known so far; settled once every report that the pad sends has come. */
  get layout(): PadLayout {
    return this.#reader.layout;
  }

  report(t: number, reportId: number, payload: Uint8Array): void {
    const reader = this.#readers.at(reportId);
    if (reader !== this.#reader) this.#readBy(reader);
    const read = this.#reader.decoder.read(reportId, payload, this.#slot);
    if (read === 'other') return;
    if (read !== 'reading') {
      this.problem = read;
      this.version += 1;
      return;
    }
    this.ring.take(t, this.#slot);
    this.extents.take(this.#slot);
    this.controls.take(t, this.#slot);
    this.version += 1;
  }

  #readBy(reader: PadReader): void {
    this.#reader = reader;
    this.controls = new ControlWatch(this.layout);
    this.extents.startAgain();
    this.version += 1;
  }

  gap(t: number): void {
    this.gaps.push(t);
    if (this.gaps.length > GAPS_KEPT) this.gaps.shift();
    this.version += 1;
  }

  /** The bench's clock now in µs, as far as this window can tell: the newest reading and the time since it came. */
  nowMicros(windowMillis: number): number {
    const since = windowMillis - this.arrivedMillis;
    return this.ring.newestTime + (Number.isNaN(since) ? 0 : Math.max(0, since) * 1000);
  }
}
