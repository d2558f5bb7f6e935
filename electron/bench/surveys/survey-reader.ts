/** Decodes a pad's reports for a survey, and hears the button that confirms. */
import { createReadingDecoder, type ReadingDecoder } from '../../../core/pad/decode-reading.ts';
import type { PadLayout } from '../../../core/pad/layout.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import type { LiveReading } from './captures/capture-run.ts';

/** Where the button is one of those that are looked at, a press says nothing: it must be held. */
const HOLD_MICROS = 2_000_000;

export class SurveyReader {
  readonly slot = createReadingSlot();
  readonly #button: number | null;
  #layout: PadLayout | null = null;
  #decoder: ReadingDecoder | null = null;
  #downSince: number | null = null;
  #isHeard = false;

  constructor(confirmButton: number | null) {
    this.#button = confirmButton;
  }

  /** The layout may settle only once reports have come. False where the report carries no reading. */
  read(layout: PadLayout, reportId: number, payload: Uint8Array): boolean {
    if (this.#decoder === null || this.#layout !== layout) this.#decoder = createReadingDecoder(layout);
    this.#layout = layout;
    return this.#decoder.read(reportId, payload, this.slot) === 'reading';
  }

  /** True once a press of the confirm button, or once it was held long enough. */
  confirms(atMicros: number, isHold: boolean): boolean {
    const bit = (this.#button ?? 1) - 1;
    const isDown = this.#button !== null && (((this.slot.buttons[bit >>> 5] ?? 0) >>> (bit & 31)) & 1) === 1;
    const since = this.#downSince;
    if (since === null && isDown) {
      this.#downSince = atMicros;
      this.#isHeard = !isHold;
      return !isHold;
    }
    // A pad that reports only changes tells of the holding when it ends.
    const isLong = isHold && since !== null && !this.#isHeard && atMicros - since >= HOLD_MICROS;
    if (isLong) this.#isHeard = true;
    if (!isDown) this.#downSince = null;
    return isLong;
  }

  /** What the capture of a stick takes of the slot; without a stick the slot alone. */
  readingOf(stick: StickId | null): LiveReading {
    const at = stick === 'right' ? 2 : 0;
    const [x = Number.NaN, y = Number.NaN] = stick === null ? [] : [this.slot.axes[at], this.slot.axes[at + 1]];
    return { x, y, buttonDown: this.slot.buttons.some((word) => word !== 0), slot: this.slot };
  }
}
