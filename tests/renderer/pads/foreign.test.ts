import { expect, test } from 'vitest';
import type { PadOwner } from '../../../core/pad/owner.ts';
import { foreignTo } from '../../../renderer/pads/foreign.ts';
import { keptNames } from '../../../renderer/pads/kept-names.ts';
import { surveyLines } from '../../../renderer/surveys/survey-lines.ts';
import type { SurveySummary } from '../../../renderer/surveys/survey-words.ts';

const now = new Date('2026-01-02T12:00:00Z');

function owner(serial: string | null): PadOwner {
  return { vendorId: 0x1209, productId: 0x000a, serial, unit: null };
}

function survey(handle: string, serial: string | null): SurveySummary {
  return {
    survey: handle,
    name: 'Pad',
    startedAt: '2024-01-02T03:04:05Z',
    stage: 'fitted',
    product: 'Pad',
    simulated: false,
    finished: true,
    pad: owner(serial),
    domain: 'sensor',
  };
}

test('without a pad in hand nothing is foreign', () => {
  expect(foreignTo(null, { product: 'Pad', pad: owner('B2') })).toBeNull();
});

test('another pad is said to be one, and what cannot be told apart more softly', () => {
  expect(foreignTo(owner('A1'), { product: 'Pad', pad: owner('A1') })).toBeNull();
  const other = foreignTo(owner('A1'), { product: 'Pad', pad: owner('B2') });
  expect(other).toMatchObject({ says: 'other pad' });
  expect(other?.title).toContain('serial number B2');
  const unknown = foreignTo(owner('A1'), { product: 'Pad', pad: owner(null) });
  expect(unknown).toMatchObject({ says: 'maybe other pad' });
  expect(unknown?.title).toMatch(/^May be of another pad/u);
});

test('lines of surveys say whose each is, and which are of another pad', () => {
  const lines = surveyLines([survey('a', 'A1'), survey('b', 'B2'), survey('c', null)], owner('A1'), now);
  expect(lines.map(({ says }) => says.replace(/2 Jan 2024 \d\d:\d\d/u, 'then'))).toEqual([
    'fitted, then · Pad · A1',
    'other pad: fitted, then · Pad · B2',
    'maybe other pad: fitted, then · Pad · no serial number',
  ]);
  expect(lines[1]?.title).toContain('1209:000a, serial number B2');
});

test('a serial number that is long loses its middle, and stands whole in the title', () => {
  const long = `SN${'0123456789'.repeat(4)}`;
  const [line] = surveyLines([survey('a', long)], null, now);
  expect(line?.says).toMatch(/· SN0123.*….*789$/u);
  expect(line?.says).not.toContain(long);
  expect(line?.title).toContain(long);
});

test('kept mappings say whose they are', () => {
  const kept = [
    { product: 'Pad', pad: owner('A1') },
    { product: 'Pad', pad: owner('B2') },
    { product: 'Old pad', pad: null },
  ];
  expect(keptNames(kept, owner('A1')).map(({ says }) => says)).toEqual([
    'Pad · A1',
    'Pad · B2 (other pad)',
    'Old pad · pad not known (maybe other pad)',
  ]);
});
