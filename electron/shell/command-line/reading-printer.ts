/** Turns the reports of one pad into printed readings; which reports carry them shows only once they have come. */
import { createReadingDecoder, type ReadingDecoder } from '../../../core/pad/decode-reading.ts';
import type { PadLayout } from '../../../core/pad/layout.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import type { Problem } from '../../../core/result.ts';
import { readingLines, type ReadingLines } from './reading-line.ts';

export class ReadingPrinter {
  readonly #layoutOf: (arriving: ReadonlySet<number>) => PadLayout;
  readonly #csv: boolean;
  readonly #arriving = new Set<number>();
  readonly #slot = createReadingSlot();
  #layout: PadLayout;
  #decoder: ReadingDecoder;
  #lines: ReadingLines;
  #readings = 0;
  #unread: Problem | null = null;

  constructor(layoutOf: (arriving: ReadonlySet<number>) => PadLayout, csv: boolean) {
    this.#layoutOf = layoutOf;
    this.#csv = csv;
    this.#layout = layoutOf(this.#arriving);
    this.#decoder = createReadingDecoder(this.#layout);
    this.#lines = readingLines(this.#layout, csv);
  }

  /** The lines of one report: none for one that carries no reading, the names of the columns before the first. */
  lines(t: number, reportId: number, payload: Uint8Array): string[] {
    if (!this.#arriving.has(reportId)) this.#meet(reportId);
    const read = this.#decoder.read(reportId, payload, this.#slot);
    if (read !== 'reading') {
      if (read !== 'other') this.#unread ??= read;
      return [];
    }
    this.#readings += 1;
    const line = this.#lines.line(t, this.#slot);
    return this.#readings === 1 && this.#lines.head !== null ? [this.#lines.head, line] : [line];
  }

  /** Why there was nothing to print, or what could not be read; null where all went well. */
  get problem(): Problem | null {
    if (this.#unread !== null || this.#readings > 0) return this.#unread;
    const says = this.#layout.noSticks ?? 'No reading came; move a stick, for some pads report only what changes.';
    return { code: 'no-reading', says };
  }

  #meet(reportId: number): void {
    this.#arriving.add(reportId);
    this.#layout = this.#layoutOf(this.#arriving);
    this.#decoder = createReadingDecoder(this.#layout);
    this.#lines = readingLines(this.#layout, this.#csv);
  }
}
