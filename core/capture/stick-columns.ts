/** Collects the readings of one stick. */
import type { PadLayout, ReadingSlot } from '../pad/layout.ts';
import type { StickFields, StickId } from '../pad/stick.ts';
import { GrowingColumn } from './growing-column.ts';
import type { StickTrack } from './track.ts';

export class StickColumns {
  readonly #axis: 0 | 2;
  readonly #fields: StickFields;
  readonly #t = new GrowingColumn();
  readonly #x = new GrowingColumn();
  readonly #y = new GrowingColumn();
  readonly #down = new GrowingColumn();

  constructor(stick: StickId, fields: StickFields) {
    this.#axis = stick === 'left' ? 0 : 2;
    this.#fields = fields;
  }

  /** A report in which an axis is in its null state says nothing of the stick and is left out. */
  add(t: number, slot: ReadingSlot): void {
    const x = slot.axes[this.#axis] ?? Number.NaN;
    const y = slot.axes[this.#axis + 1] ?? Number.NaN;
    if (Number.isNaN(x) || Number.isNaN(y)) return;
    this.#t.push(t);
    this.#x.push(x);
    this.#y.push(y);
    this.#down.push(isAnyDown(slot.buttons) ? 1 : 0);
  }

  /** The track of the readings so far; the columns are empty afterwards. */
  take(): StickTrack {
    return {
      fields: this.#fields,
      t: this.#t.take(),
      x: this.#x.take(),
      y: this.#y.take(),
      buttonDown: Uint8Array.from(this.#down.take()),
    };
  }
}

/** By index: taking the array apart makes an iterator for every report. */
function isAnyDown(buttons: Uint32Array): boolean {
  for (let word = 0; word < buttons.length; word += 1) if (buttons[word] !== 0) return true;
  return false;
}

/** Columns for the sticks of a layout that the report with this id tells of. */
export function columnsOf(layout: PadLayout, reportId: number): Partial<Record<StickId, StickColumns>> {
  const columns: Partial<Record<StickId, StickColumns>> = {};
  for (const stick of ['left', 'right'] as const) {
    const source = layout.stickSources[stick];
    const fields = layout.sticks[stick];
    if (source === undefined || fields === undefined) continue;
    if (source.x.reportId === reportId || source.y.reportId === reportId)
      columns[stick] = new StickColumns(stick, fields);
  }
  return columns;
}
