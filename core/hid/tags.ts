/** Prefixes of short items without their size bits (HID 1.11, 6.2.2.4, 6.2.2.7 and 6.2.2.8). */

export const mainTags = { input: 0x80, output: 0x90, collection: 0xa0, feature: 0xb0, endCollection: 0xc0 } as const;

export const globalTags = {
  usagePage: 0x04,
  logicalMinimum: 0x14,
  logicalMaximum: 0x24,
  physicalMinimum: 0x34,
  physicalMaximum: 0x44,
  unitExponent: 0x54,
  unit: 0x64,
  reportSize: 0x74,
  reportId: 0x84,
  reportCount: 0x94,
  push: 0xa4,
  pop: 0xb4,
} as const;

/** Designators and strings name no value of a report; their items are read and passed over. */
export const localTags = { usage: 0x08, usageMinimum: 0x18, usageMaximum: 0x28, delimiter: 0xa8 } as const;

/** Bits of the data of Input, Output and Feature items (HID 1.11, 6.2.2.5). */
export const fieldFlags = { constant: 0x01, variable: 0x02, relative: 0x04, nullState: 0x40 } as const;
