/** A reading as `watch` prints it: one JSON object a line, or the same as columns. */
import type { PadLayout, ReadingSlot } from '../../../core/pad/layout.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { outputHead } from './output.ts';

export interface ReadingLines {
  /** The line that names the columns, or null. */
  readonly head: string | null;
  readonly line: (t: number, slot: ReadingSlot) => string;
}

export function readingLines(layout: PadLayout, csv: boolean): ReadingLines {
  const sticks = STICKS.filter((stick) => layout.sticks[stick] !== undefined);
  const triggers = STICKS.filter((stick) => layout.triggers[stick] !== undefined);
  const buttons = layout.buttons.map(({ usage }) => usage);
  return csv ? columnLines(sticks, triggers, buttons) : jsonLines(sticks, triggers, buttons);
}

function jsonLines(sticks: readonly StickId[], triggers: readonly StickId[], buttons: readonly number[]): ReadingLines {
  return {
    head: null,
    line: (t, slot) =>
      JSON.stringify({
        ...outputHead('reading'),
        t,
        sticks: Object.fromEntries(
          sticks.map((stick) => [stick, { x: axis(slot, stick, 0), y: axis(slot, stick, 1) }]),
        ),
        triggers: Object.fromEntries(
          triggers.map((trigger) => [trigger, known(slot.triggers[STICKS.indexOf(trigger)])]),
        ),
        hat: known(slot.hat[0]),
        buttons: buttons.filter((usage) => isDown(slot, usage)),
      }),
  };
}

function columnLines(
  sticks: readonly StickId[],
  triggers: readonly StickId[],
  buttons: readonly number[],
): ReadingLines {
  const head = [
    't',
    ...sticks.flatMap((stick) => [`${stick}.x`, `${stick}.y`]),
    ...triggers.map((trigger) => `trigger.${trigger}`),
    'hat',
    'buttons',
  ].join(',');
  return {
    head,
    line: (t, slot) =>
      [
        t,
        ...sticks.flatMap((stick) => [axis(slot, stick, 0), axis(slot, stick, 1)]),
        ...triggers.map((trigger) => known(slot.triggers[STICKS.indexOf(trigger)])),
        known(slot.hat[0]),
        buttons.filter((usage) => isDown(slot, usage)).join(' '),
      ].join(','),
  };
}

function axis(slot: ReadingSlot, stick: StickId, index: 0 | 1): number | null {
  return known(slot.axes[2 * STICKS.indexOf(stick) + index]);
}

function known(value: number | undefined): number | null {
  return value === undefined || Number.isNaN(value) ? null : value;
}

function isDown(slot: ReadingSlot, usage: number): boolean {
  return (((slot.buttons[(usage - 1) >>> 5] ?? 0) >>> ((usage - 1) & 31)) & 1) === 1;
}
