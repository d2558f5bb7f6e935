/** Turns the reports of one pad into printed readings. */
import { ByArrival } from '../../../core/pad/by-arrival.ts';
import { createReadingDecoder, type ReadingDecoder } from '../../../core/pad/decode-reading.ts';
import type { PadLayout } from '../../../core/pad/layout.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import type { Problem } from '../../../core/result.ts';
import { readingLines, type ReadingLines } from './reading-line.ts';

interface Reader {
  readonly layout: PadLayout;
  readonly decoder: ReadingDecoder;
  readonly lines: ReadingLines;
}

export class ReadingPrinter {
  readonly #readers: ByArrival<Reader>;
  readonly #slot = createReadingSlot();
  #readings = 0;
  #unread: Problem | null = null;

  constructor(layoutOf: (arriving: ReadonlySet<number> | null) => PadLayout, csv: boolean) {
    this.#readers = new ByArrival((arriving) => {
      const layout = layoutOf(arriving);
      return { layout, decoder: createReadingDecoder(layout), lines: readingLines(layout, csv) };
    });
  }

  /** The lines of one report: none for one that carries no reading, the names of the columns before the first. */
  lines(t: number, reportId: number, payload: Uint8Array): string[] {
    const { decoder, lines } = this.#readers.at(reportId);
    const read = decoder.read(reportId, payload, this.#slot);
    if (read !== 'reading') {
      if (read !== 'other') this.#unread ??= read;
      return [];
    }
    this.#readings += 1;
    const line = lines.line(t, this.#slot);
    return this.#readings === 1 && lines.head !== null ? [lines.head, line] : [line];
  }

  /** Why there was nothing to print, or what could not be read; null where all went well. */
  get problem(): Problem | null {
    if (this.#unread !== null || this.#readings > 0) return this.#unread;
    const says =
      this.#readers.now.layout.noSticks ?? 'No reading came; move a stick, for some pads report only what changes.';
    return { code: 'no-reading', says };
  }
}
