/** Collects what the reports of one id tell of buttons, hat and triggers: only where it changes. */
import type { FieldSource, PadLayout, ReadingSlot } from '../../pad/layout.ts';
import { STICKS, type StickId } from '../../pad/stick.ts';
import { byteColumn, numberColumn } from './growing-column.ts';
import type { InputTrack, SwitchTrack, ValueTrack } from './track.ts';

/** Which report tells of the inputs; null for a pad without any. They all come in one report (`findLayout`). */
export function inputReportId(layout: PadLayout): number | null {
  const sources = [layout.buttons[0]?.source, layout.hat, layout.dPad?.up, layout.triggers.left, layout.triggers.right];
  return sources.find((source) => source !== null && source !== undefined)?.reportId ?? null;
}

export class InputColumns {
  readonly #usages: readonly number[];
  readonly #mask = new Uint32Array(4);
  readonly #down = new Uint32Array(4);
  readonly #changes = { t: numberColumn(), usage: byteColumn(), down: byteColumn() };
  readonly #hat: ValueColumn | null;
  readonly #triggers: readonly { readonly of: StickId; readonly slot: number; readonly column: ValueColumn }[];
  #isFirst = true;

  /** For the inputs of the layout that the report with this id tells of. */
  constructor(layout: PadLayout, reportId: number) {
    const isTold = (source: FieldSource | null | undefined): boolean => source?.reportId === reportId;
    this.#usages = layout.buttons.filter(({ source }) => isTold(source)).map(({ usage }) => usage);
    for (const usage of this.#usages) this.#mask[wordOf(usage)] = (this.#mask[wordOf(usage)] ?? 0) | bitOf(usage);
    this.#hat = isTold(layout.hat) || isTold(layout.dPad?.up) ? new ValueColumn() : null;
    this.#triggers = STICKS.filter((of) => isTold(layout.triggers[of])).map((of) => ({
      of,
      slot: STICKS.indexOf(of),
      column: new ValueColumn(),
    }));
  }

  add(t: number, slot: ReadingSlot): void {
    for (let word = 0; word < 4; word += 1) {
      const now = (slot.buttons[word] ?? 0) & (this.#mask[word] ?? 0);
      if (this.#isFirst || now >>> 0 !== this.#down[word]) this.#addWord(t, word, now);
    }
    this.#isFirst = false;
    this.#hat?.add(t, slot.hat[0] ?? Number.NaN);
    for (const trigger of this.#triggers) trigger.column.add(t, slot.triggers[trigger.slot] ?? Number.NaN);
  }

  /** What was told so far; the columns are empty afterwards. */
  take(): InputTrack {
    const t = this.#changes.t.take();
    const usages = this.#changes.usage.take();
    const downs = this.#changes.down.take();
    return {
      buttons: this.#usages.map((usage) => switchTrack(usage, t, usages, downs)),
      hat: this.#hat?.take() ?? null,
      triggers: Object.fromEntries(this.#triggers.map(({ of, column }) => [of, column.take()])),
    };
  }

  #addWord(t: number, word: number, now: number): void {
    const changed = this.#isFirst ? (this.#mask[word] ?? 0) : now ^ (this.#down[word] ?? 0);
    for (let bit = 0; bit < 32; bit += 1) {
      if (((changed >>> bit) & 1) === 0) continue;
      this.#changes.t.push(t);
      this.#changes.usage.push(32 * word + bit + 1);
      this.#changes.down.push((now >>> bit) & 1);
    }
    this.#down[word] = now;
  }
}

/** A value that is kept where it changes; NaN stands for one that is not told, and equals itself. */
class ValueColumn {
  readonly #t = numberColumn();
  readonly #value = numberColumn();
  #last: number | null = null;

  add(t: number, value: number): void {
    if (Object.is(value, this.#last)) return;
    this.#last = value;
    this.#t.push(t);
    this.#value.push(value);
  }

  take(): ValueTrack {
    return { t: this.#t.take(), value: this.#value.take() };
  }
}

function switchTrack(usage: number, t: Float64Array, usages: Uint8Array, downs: Uint8Array): SwitchTrack {
  const isOwn = (_: number, i: number): boolean => usages[i] === usage;
  return { usage, t: t.filter(isOwn), down: downs.filter(isOwn) };
}

function wordOf(usage: number): number {
  return (usage - 1) >>> 5;
}

function bitOf(usage: number): number {
  return 1 << ((usage - 1) & 31);
}
