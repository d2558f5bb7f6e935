import { expect, test } from 'vitest';
import { shownText } from '../../../renderer/workbench/shown-text.ts';

test('names directions, counts and times of a finding', () => {
  expect(
    shownText({
      directions: [265, 270, 275, 280],
      counts: [
        { axis: 'x', from: 120, to: 180 },
        { axis: 'y', from: 7, to: 7 },
      ],
      spans: [{ startUs: 12_300_000, endUs: 12_800_000 }],
    }),
  ).toBe('directions 265–280°; x counts 120–180; y counts 7; 12.3–12.8 s of the log');
});

test('counts what would make the line too long, and is empty where nothing is shown', () => {
  const counts = Array.from({ length: 6 }, (_, index) => ({ axis: 'x' as const, from: index, to: index }));
  expect(shownText({ directions: [], counts, spans: [] })).toBe('x counts 0, 1, 2, 3 and 2 more');
  expect(shownText({ directions: [], counts: [], spans: [] })).toBe('');
});

test('stretches that overlap are named as the one that they mark, in the order of the axis', () => {
  const counts = [
    { axis: 'y' as const, from: 1424, to: 1522 },
    { axis: 'y' as const, from: 1341, to: 1383 },
    { axis: 'y' as const, from: 1452, to: 1484 },
    { axis: 'y' as const, from: 1370, to: 1402 },
  ];
  expect(shownText({ directions: [], counts, spans: [] })).toBe('y counts 1341–1402, 1424–1522');
});
