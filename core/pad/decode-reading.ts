/** Decodes a pad's reports into readings. */
import type { Control } from '../hid/control.ts';
import { decodeInto } from '../hid/decode.ts';
import { planControls, type ReportPlan } from '../hid/plan.ts';
import type { Problem } from '../result.ts';
import { isButton } from './find-switches.ts';
import { dPadDirection, hatDirection } from './hat.ts';
import type { FieldSource, PadLayout, ReadingSlot } from './layout.ts';

export interface ReadingDecoder {
  /**
   * Writes what the report says into the slot. `other` for a report that carries nothing of a reading: the slot stays
   * as it was. A payload that ends before the last field of a reading is a problem; what is missing after it is not.
   */
  read(reportId: number, payload: Uint8Array, slot: ReadingSlot): 'reading' | 'other' | Problem;
}

/** Works everything out once; a report then allocates nothing unless it is a problem. */
export function createReadingDecoder(layout: PadLayout): ReadingDecoder {
  const readers = new Map<number, ReportReader>();
  for (const reportId of reportIds(layout)) readers.set(reportId, new ReportReader(layout, reportId));
  return {
    read(reportId, payload, slot) {
      const reader = readers.get(reportId);
      return reader === undefined ? 'other' : (reader.read(payload, slot) ?? 'reading');
    },
  };
}

/** Reads what one report carries of a reading. −1 stands for a part that it does not carry. */
class ReportReader {
  readonly #controls: Control[] = [];
  readonly #plan: ReportPlan;
  readonly #values: Float64Array;
  readonly #axes: readonly number[];
  readonly #triggers: readonly number[];
  readonly #hat: number;
  readonly #dPad: readonly number[];
  readonly #buttons: readonly { readonly index: number; readonly word: number; readonly bit: number }[];
  readonly #slots: readonly number[];
  /** Bits of the buttons that this report carries. */
  readonly #mask = new Uint32Array(4);

  constructor(layout: PadLayout, reportId: number) {
    const indices = new Map<Control, number>();
    const index = (source: FieldSource | null | undefined): number => {
      if (source?.reportId !== reportId) return -1;
      const known = indices.get(source.control) ?? this.#controls.push(source.control) - 1;
      indices.set(source.control, known);
      return known;
    };
    const { left, right } = layout.stickSources;
    this.#axes = [left?.x, left?.y, right?.x, right?.y].map(index);
    this.#triggers = [layout.triggers.left, layout.triggers.right].map(index);
    this.#hat = index(layout.hat);
    const { dPad } = layout;
    this.#dPad = dPad === undefined ? [] : [dPad.up, dPad.right, dPad.down, dPad.left].map(index);
    const buttons = layout.buttons.filter(({ source }) => source.reportId === reportId);
    for (const { usage } of buttons) setBit(this.#mask, usage);
    this.#buttons = buttons
      .filter(({ source }) => !source.control.array)
      .map(({ usage, source }) => ({ index: index(source), word: (usage - 1) >>> 5, bit: 1 << ((usage - 1) & 31) }));
    this.#slots = (layout.buttonSlots ?? []).map(index).filter((slot) => slot >= 0);
    const bits = this.#controls.reduce((end, control) => Math.max(end, control.bitOffset + control.bitSize), 0);
    this.#plan = planControls(reportId, Math.ceil(bits / 8), this.#controls);
    this.#values = new Float64Array(this.#controls.length);
  }

  read(payload: Uint8Array, slot: ReadingSlot): Problem | null {
    const problem = decodeInto(this.#plan, payload, this.#values);
    if (problem !== null) return problem;
    this.#copy(this.#axes, slot.axes);
    this.#copy(this.#triggers, slot.triggers);
    if (this.#hat >= 0)
      slot.hat[0] = hatDirection(this.#controls[this.#hat] as Control, this.#values[this.#hat] as number);
    else if (this.#dPad.length === 4)
      slot.hat[0] = dPadDirection(this.#isDown(0), this.#isDown(1), this.#isDown(2), this.#isDown(3));
    this.#readButtons(slot.buttons);
    return null;
  }

  #copy(indices: readonly number[], into: Float64Array): void {
    for (let at = 0; at < indices.length; at += 1) {
      const index = indices[at] as number;
      if (index >= 0) into[at] = this.#values[index] as number;
    }
  }

  #isDown(direction: number): boolean {
    return this.#values[this.#dPad[direction] as number] === 1;
  }

  #readButtons(into: Uint32Array): void {
    for (let word = 0; word < 4; word += 1) into[word] = (into[word] as number) & ~(this.#mask[word] as number);
    for (let at = 0; at < this.#buttons.length; at += 1) {
      const button = this.#buttons[at] as { index: number; word: number; bit: number };
      const value = this.#values[button.index] as number;
      if (value !== 0 && !Number.isNaN(value)) into[button.word] = (into[button.word] as number) | button.bit;
    }
    for (let at = 0; at < this.#slots.length; at += 1) {
      const slot = this.#slots[at] as number;
      const control = this.#controls[slot] as Control;
      const choice = control.choices[(this.#values[slot] as number) - control.logicalMinimum];
      if (choice !== undefined && isButton(choice)) setBit(into, choice.usage);
    }
  }
}

function setBit(words: Uint32Array, usage: number): void {
  const word = (usage - 1) >>> 5;
  words[word] = (words[word] ?? 0) | (1 << ((usage - 1) & 31));
}

function reportIds(layout: PadLayout): ReadonlySet<number> {
  const { left, right } = layout.stickSources;
  const sources = [
    ...[left?.x, left?.y, right?.x, right?.y, layout.triggers.left, layout.triggers.right, layout.hat],
    ...Object.values(layout.dPad ?? {}),
    ...layout.buttons.map(({ source }) => source),
    ...(layout.buttonSlots ?? []),
  ];
  return new Set(sources.flatMap((source) => (source === null || source === undefined ? [] : [source.reportId])));
}
