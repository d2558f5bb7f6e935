import { expect, test } from 'vitest';
import type { Report } from '../../../renderer/stick/judged-stick.ts';
import { allanTable, moreMeasures, moreTable } from '../../../renderer/workbench/more-measures.ts';
import { emptyReport } from '../../support/empty-report.ts';
import { drawnRows } from '../support/drawn-rows.ts';

const axis = { min: 0, centre: 1, max: 2 };
const bare: NonNullable<Report['sticks']['left']> = {
  rest: null,
  rim: null,
  travel: null,
  flick: null,
  disturbance: null,
  allan: null,
  warmUp: null,
  mapping: { x: axis, y: axis },
  mappingFrom: 'range',
  captures: 'marked',
  lacks: [],
};

function valueOf(part: Partial<typeof bare>, label: string): string | undefined {
  const report = { ...emptyReport(), sticks: { left: { ...bare, ...part } } };
  return moreMeasures(report, 'left').find((line) => line.label.startsWith(label))?.value;
}

test('what was not captured has no line, and what cannot be known says so', () => {
  expect(valueOf({}, 'overshoot')).toBeUndefined();
  expect(valueOf({}, 'lost reports')).toBe('not known');
  expect(valueOf({}, 'interval')).toBe('—');
});

test('a disturbance is written with its uncertainty, axis by axis', () => {
  const disturbance = [
    { of: 'other-stick', shift: { x: 12.3, y: -0.4 }, u95: { x: 2.1, y: 1.9 }, startUs: 0, endUs: 1 },
  ];
  expect(valueOf({ disturbance }, 'rest under other stick')).toBe('12.3 ± 2.1, −0.4 ± 1.9');
});

test('a warm-up that still drifts says wait', () => {
  const drift = { x: 0.5, y: -0.1, u95: { x: 0.1, y: 0.1 } };
  const warmUp = { dwells: 6, drift, last: drift, steady: false, seconds: 120 };
  expect(valueOf({ warmUp }, 'warm-up')).toBe('wait: 30.0, −6.0 in 120 s');
});

test('the Allan deviation has a table twin, with a dash for an axis that has none', () => {
  expect(drawnRows(allanTable({ tauUs: [1000, 2000], x: [0.5, 0.25], y: null }))).toEqual([
    ['1.00 ms', '0.500', '—'],
    ['2.00 ms', '0.250', '—'],
  ]);
});

test('measures stand as a table, each with what it means', () => {
  const lines = [{ label: 'interval', definition: 'Between two reports.', value: '4.00 ms' }];
  expect(moreTable(lines).rows).toEqual([[{ says: 'interval', definition: 'Between two reports.' }, '4.00 ms']]);
});
