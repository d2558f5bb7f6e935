/** A pad of two bytes a report, x and y, with sixteen buttons, a hat and a trigger, as a layout and readings of the test's own. */
import type { Control } from '../../../core/hid/control.ts';
import type { FieldSource, PadLayout, ReadingSlot } from '../../../core/pad/layout.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import type { PadReader } from '../../../renderer/pads/live-readings.ts';

function field(usage: number, bitOffset: number, bitSize: number, logicalMaximum: number): FieldSource {
  const control: Control = {
    type: 'input',
    reportId: null,
    usagePage: 1,
    usage,
    usageMinimum: null,
    usageMaximum: null,
    bitOffset,
    bitSize,
    logicalMinimum: 0,
    logicalMaximum,
    physicalMinimum: 0,
    physicalMaximum: 0,
    unit: 0,
    unitExponent: 0,
    signed: false,
    hasNull: false,
    relative: false,
    array: false,
    constant: false,
    aliases: [],
    choices: [],
    application: null,
    collection: 0,
  };
  return { reportId: 0, control };
}

export const smallLayout: PadLayout = {
  profile: null,
  domain: 'reported',
  sticks: { left: { x: { minimum: 0, maximum: 255, up: 1 }, y: { minimum: 0, maximum: 255, up: -1 } } },
  stickSources: { left: { x: field(0x30, 0, 8, 255), y: field(0x31, 8, 8, 255) } },
  triggers: { right: field(0x32, 16, 8, 100) },
  hat: field(0x39, 24, 4, 7),
  buttons: Array.from({ length: 40 }, (_none, index) => ({
    usage: index + 1,
    source: field(index + 1, 32 + index, 1, 1),
  })),
  clicks: { left: 11 },
  noSticks: null,
};

/** Reads a report of two bytes as left x and y; any other length is a problem, report id 9 is none of its own. */
export const smallReader: PadReader = {
  layout: smallLayout,
  decoder: {
    read(reportId, payload, slot) {
      if (reportId === 9) return 'other';
      if (payload.length !== 2) return { code: 'report-too-short', says: 'The report is too short.' };
      slot.axes.set(payload);
      return 'reading';
    },
  },
};

/** A reading as a slot: axes, then what else the test needs. */
export function slotOf(reading: {
  axes?: readonly number[];
  triggers?: readonly number[];
  hat?: number;
  down?: readonly number[];
}): ReadingSlot {
  const slot = createReadingSlot();
  slot.axes.fill(Number.NaN);
  slot.axes.set(reading.axes ?? []);
  slot.triggers.fill(Number.NaN);
  slot.triggers.set(reading.triggers ?? []);
  slot.hat[0] = reading.hat ?? Number.NaN;
  slot.buttons.fill(0);
  for (const usage of reading.down ?? []) slot.buttons[(usage - 1) >> 5]! |= 1 << ((usage - 1) & 31);
  return slot;
}
