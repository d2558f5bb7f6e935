/** Collects the readings that one report id carries. */
import type { PadLayout, ReadingSlot } from '../../pad/layout.ts';
import { STICKS, type StickFields, type StickId } from '../../pad/stick.ts';
import { byteColumn, numberColumn } from './growing-column.ts';
import type { StickTrack } from './track.ts';

/** Sticks of one report share the columns of times and buttons, so that a long log stays small. */
export class ReadingColumns {
  readonly #t = numberColumn();
  readonly #down = byteColumn();
  readonly #sticks: readonly AxisColumns[];

  /** For the sticks of the layout that the report with this id tells of. */
  constructor(layout: PadLayout, reportId: number) {
    this.#sticks = STICKS.flatMap((stick) => {
      const source = layout.stickSources[stick];
      const fields = layout.sticks[stick];
      const isTold = source?.x.reportId === reportId || source?.y.reportId === reportId;
      return isTold && fields !== undefined ? [new AxisColumns(stick, fields)] : [];
    });
  }

  add(t: number, slot: ReadingSlot): void {
    if (this.#sticks.length === 0) return;
    this.#t.push(t);
    this.#down.push(isAnyDown(slot.buttons) ? 1 : 0);
    for (const stick of this.#sticks) stick.add(slot);
  }

  /** The tracks of the readings so far; the columns are empty afterwards. */
  take(): Partial<Record<StickId, StickTrack>> {
    const t = this.#t.take();
    const buttonDown = this.#down.take();
    return Object.fromEntries(this.#sticks.map((stick) => [stick.stick, stick.take(t, buttonDown)]));
  }
}

class AxisColumns {
  readonly stick: StickId;
  readonly #fields: StickFields;
  readonly #axis: 0 | 2;
  readonly #x = numberColumn();
  readonly #y = numberColumn();
  #nulls = 0;

  constructor(stick: StickId, fields: StickFields) {
    this.stick = stick;
    this.#fields = fields;
    this.#axis = stick === 'left' ? 0 : 2;
  }

  add(slot: ReadingSlot): void {
    const x = slot.axes[this.#axis] ?? Number.NaN;
    const y = slot.axes[this.#axis + 1] ?? Number.NaN;
    this.#x.push(x);
    this.#y.push(y);
    if (Number.isNaN(x) || Number.isNaN(y)) this.#nulls += 1;
  }

  /** A report in which an axis is in its null state says nothing of the stick and is left out. */
  take(t: Float64Array, buttonDown: Uint8Array): StickTrack {
    const [x, y] = [this.#x.take(), this.#y.take()];
    if (this.#nulls === 0) return { fields: this.#fields, t, x, y, buttonDown };
    this.#nulls = 0;
    const isTold = (_: number, i: number): boolean => !Number.isNaN(x[i]) && !Number.isNaN(y[i]);
    return {
      fields: this.#fields,
      t: t.filter(isTold),
      x: x.filter(isTold),
      y: y.filter(isTold),
      buttonDown: buttonDown.filter(isTold),
    };
  }
}

/** By index: taking the array apart makes an iterator for every report. */
function isAnyDown(buttons: Uint32Array): boolean {
  for (let word = 0; word < buttons.length; word += 1) if (buttons[word] !== 0) return true;
  return false;
}
