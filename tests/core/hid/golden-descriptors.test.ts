import { describe, expect, it } from 'vitest';
import type { Control } from '../../../core/hid/control.ts';
import { createReportDescriber } from '../../../core/hid/describe-report.ts';
import { goldenDescriptors, type GoldenField, type GoldenSample } from '../../support/golden-descriptors.ts';
import { hexBytes, parsed } from '../../support/hid-bytes.ts';

/** What the golden file says of one element, in the words of a control. */
function expectedControl(field: GoldenField, index: number): Partial<Control> {
  const ranged = field.array !== true && field.usageRepeats !== true && field.usageMax !== undefined;
  return {
    type: 'input',
    reportId: field.reportId,
    usagePage: field.usagePage,
    usage: ranged ? (field.usage ?? 0) + index : field.usage,
    usageMinimum: field.array === true ? field.usage : null,
    usageMaximum: field.array === true ? (field.usageMax ?? field.usage) : null,
    bitOffset: field.bitOffset + index * field.bitSize,
    bitSize: field.bitSize,
    logicalMinimum: field.logicalMin,
    logicalMaximum: field.logicalMax,
    signed: field.signed,
    hasNull: field.nullState,
    relative: field.relative ?? false,
    array: field.array ?? false,
    constant: false,
    aliases: field.aliases ?? [],
    ...(field.physicalMin === undefined ? {} : { physicalMinimum: field.physicalMin }),
    ...(field.physicalMax === undefined ? {} : { physicalMaximum: field.physicalMax }),
    ...(field.unit === undefined ? {} : { unit: Number(field.unit) }),
  };
}

function elements<T extends { readonly count: number }, U>(
  fields: readonly T[],
  make: (field: T, index: number) => U,
): U[] {
  return fields.flatMap((field) => Array.from({ length: field.count }, (_, index) => make(field, index)));
}

/** Usages of the buttons that a mask names. */
function usagesOf(mask: number): number[] {
  return Array.from({ length: 32 }, (_, bit) => bit + 1).filter(
    (usage) => Math.floor(mask / 2 ** (usage - 1)) % 2 === 1,
  );
}

function expectedValues(sample: GoldenSample): Record<string, number | null> {
  const nulls = new Set(sample.nullFields);
  const values = Object.entries(sample.expected).filter(([key]) => key !== 'buttons');
  return Object.fromEntries(values.map(([key, value]) => [key, nulls.has(key) ? null : value]));
}

it('finds the golden descriptors', () => {
  expect(goldenDescriptors.length).toBeGreaterThanOrEqual(23);
});

describe.each(goldenDescriptors)('the descriptor $id ($source)', (golden) => {
  const descriptor = parsed(golden.descriptorHex);
  const inputs = descriptor.controls.filter((control) => control.type === 'input');

  it('has the length that is stated for it', () => {
    expect(hexBytes(golden.descriptorHex)).toHaveLength(golden.descriptorLength);
  });

  it('gives every input field as stated, and no other', () => {
    const found = inputs.filter((control) => !control.constant);
    const wanted = elements(golden.expectedFields, expectedControl);
    expect(found).toHaveLength(wanted.length);
    for (const control of wanted)
      expect(
        found.find((one) => one.bitOffset === control.bitOffset && one.reportId === control.reportId),
        `bit ${String(control.bitOffset)} of report ${String(control.reportId)}`,
      ).toMatchObject(control);
  });

  it('gives padding as constant', () => {
    const constant = inputs.filter((control) => control.constant);
    for (const pad of elements(golden.padding, (field, index) => ({
      reportId: field.reportId,
      bitOffset: field.bitOffset + index * field.bitSize,
      bitSize: field.bitSize,
    })))
      expect(constant).toContainEqual(expect.objectContaining(pad));
    expect(constant).toHaveLength(elements(golden.padding, () => 0).length);
  });

  it('has the stated input reports, lengths and applications', () => {
    expect(descriptor.hasReportIds).toBe(golden.hasReportIds);
    const reports = descriptor.reports.filter((report) => report.type === 'input');
    expect(Object.fromEntries(reports.map((report) => [report.reportId ?? 0, report.byteLength]))).toEqual(
      Object.fromEntries(Object.entries(golden.inputReports).map(([id, report]) => [id, report.payloadBytes])),
    );
    for (const { application } of inputs) expect(golden.applicationCollections).toContainEqual(application);
  });

  it.each(golden.sampleReports)('decodes $hex ($label, $origin)', (sample) => {
    const report = createReportDescriber(descriptor).describeHex(sample.hex);
    if (!report.ok) throw new Error(report.problem.says);
    expect(report.value.values).toMatchObject(expectedValues(sample));
    if (sample.expected['buttons'] !== undefined)
      expect(report.value.buttons).toEqual(usagesOf(sample.expected['buttons']));
    expect(report.value.reportId).toBe(golden.hasReportIds ? hexBytes(sample.hex)[0] : null);
  });
});

/** The axes that the source publishes expected positions of, and the usage that each name stands for. */
const axisKeys: Readonly<Record<string, string>> = {
  X: '0001:0030',
  Y: '0001:0031',
  Z: '0001:0032',
  Rx: '0001:0033',
  Ry: '0001:0034',
  Rz: '0001:0035',
};

const published = goldenDescriptors.flatMap((golden) =>
  golden.sampleReports
    .filter((sample) => sample.publishedNormalised !== undefined)
    .map((sample) => ({ golden, sample, id: golden.id, hex: sample.hex, source: golden.source })),
);

describe('positions that a source publishes', () => {
  it('are there to be checked', () => {
    expect(published.length).toBeGreaterThan(0);
  });

  it.each(published)('hold for $hex of $id ($source)', ({ golden, sample }) => {
    const descriptor = parsed(golden.descriptorHex);
    const report = createReportDescriber(descriptor).describeHex(sample.hex);
    if (!report.ok) throw new Error(report.problem.says);
    for (const [name, position] of Object.entries(sample.publishedNormalised ?? {})) {
      const key = axisKeys[name];
      const field = golden.expectedFields.find((one) => one.name === name);
      const value = key === undefined ? undefined : report.value.values[key];
      if (field === undefined || typeof value !== 'number') throw new Error(`No value for ${name}.`);
      const normalised = (2 * (value - field.logicalMin)) / (field.logicalMax - field.logicalMin) - 1;
      expect(Math.abs(normalised - position)).toBeLessThanOrEqual(sample.normalisedTolerance ?? 0.01);
    }
  });
});
