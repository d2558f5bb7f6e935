import { describe, expect, it } from 'vitest';
import { createReportDescriber, type ReportDescription } from '../../../core/hid/describe-report.ts';
import type { Problem } from '../../../core/result.ts';
import { goldenDescriptor } from '../../support/golden-descriptors.ts';
import { parsed } from '../../support/hid-bytes.ts';

function described(descriptor: string, hex: string): ReportDescription {
  const report = createReportDescriber(parsed(descriptor)).describeHex(hex);
  if (!report.ok) throw new Error(report.problem.says);
  return report.value;
}

function problemOf(descriptor: string, hex: string): Problem {
  const report = createReportDescriber(parsed(descriptor)).describeHex(hex);
  if (report.ok) throw new Error('The report is described.');
  return report.problem;
}

const BYTE = '05 01 14 26 ff 00 75 08 95 01';

describe('createReportDescriber', () => {
  it('gives values by usage, a null state as null, and the buttons that are down', () => {
    const descriptor = `${BYTE} 09 30 81 02 25 07 75 04 09 39 81 42 05 09 19 01 29 04 25 01 75 01 95 04 81 02`;
    expect(described(descriptor, '80 58')).toEqual({
      reportId: null,
      values: { '0001:0030': 128, '0001:0039': null },
      buttons: [1, 3],
    });
    expect(described(descriptor, '80 02')).toEqual({
      reportId: null,
      values: { '0001:0030': 128, '0001:0039': 2 },
      buttons: [],
    });
  });

  it('numbers further controls of one usage in order', () => {
    expect(described(`${BYTE} 95 03 09 30 81 02 09 31 95 01 81 02`, '01 02 03 04').values).toEqual({
      '0001:0030': 1,
      '0001:0030#2': 2,
      '0001:0030#3': 3,
      '0001:0031': 4,
    });
  });

  it('counts each report by itself, whose hex begins with its id', () => {
    const descriptor = `${BYTE} 85 01 09 30 81 02 85 a2 09 30 81 02`;
    expect(described(descriptor, 'a2 07')).toEqual({ reportId: 0xa2, values: { '0001:0030': 7 }, buttons: [] });
  });

  it('writes usages as four upper-case digits', () => {
    expect(described('06 bc ff 0a ad bd 14 25 7f 75 08 95 01 81 02', '01').values).toEqual({ 'FFBC:BDAD': 1 });
  });

  it('leaves controls without usage out', () => {
    expect(described(`${BYTE} 81 02 09 30 81 02`, '01 02').values).toEqual({ '0001:0030': 2 });
  });

  it('gives 1 for every usage that an array selects, and nothing for none or an index out of range', () => {
    const keys = '05 07 19 00 29 65 14 25 65 75 08 95 06 81 00';
    expect(described(keys, '04 00 1d 04 66 ff')).toEqual({
      reportId: null,
      values: { '0007:0004': 1, '0007:001D': 1 },
      buttons: [],
    });
  });

  it('lists the buttons that an array selects', () => {
    expect(described('05 09 19 01 29 08 15 01 25 08 75 04 95 02 81 00', '50').buttons).toEqual([5]);
    expect(described('05 09 19 00 29 08 14 25 08 75 04 95 02 81 00', '53')).toEqual({
      reportId: null,
      values: {},
      buttons: [3, 5],
    });
  });

  it('lists a button with more than two values under values too', () => {
    const pressure = '05 09 09 07 14 26 ff 00 75 08 95 01 81 02';
    expect(described(pressure, '20')).toEqual({ reportId: null, values: { '0009:0007': 32 }, buttons: [7] });
    expect(described(pressure, '00')).toEqual({ reportId: null, values: { '0009:0007': 0 }, buttons: [] });
  });

  it('lists each button once and in order, whatever their order in the report', () => {
    const { descriptorHex } = goldenDescriptor('pad-b');
    const report = `0704${'00'.repeat(33)}`;
    expect(described(descriptorHex, report).buttons).toEqual([1, 2, 5, 14]);
  });

  it('says that a report is too short, has an unknown id, or no bytes at all', () => {
    const numbered = `${BYTE} 85 01 09 30 09 31 95 02 81 02`;
    expect(problemOf(numbered, '01 07')).toMatchObject({ code: 'report-too-short' });
    expect(problemOf(numbered, '02 07 07')).toMatchObject({ code: 'report-unknown' });
    expect(problemOf(numbered, '02 07 07').says).toContain('no input report 2, only 1;');
    expect(problemOf(numbered, '')).toMatchObject({ code: 'report-empty' });
    expect(problemOf(`${BYTE} 09 30 81 02`, '')).toMatchObject({ code: 'report-empty' });
    expect(problemOf(`${BYTE} 09 30 91 02`, '01')).toMatchObject({ code: 'report-unknown' });
    expect(problemOf(numbered, '0x')).toMatchObject({ code: 'hex-not-a-digit' });
  });
});
