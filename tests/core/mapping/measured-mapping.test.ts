import { expect, test } from 'vitest';
import { measuredMapping } from '../../../core/mapping/measured-mapping.ts';
import { makeEvidence, sixTurns } from '../../support/make-evidence.ts';

const turns = sixTurns(() => 1000);

test('the extents of the turns stand around the mean of the rest points', () => {
  const dwells = [{ point: { x: 2040, y: 2050 } }, { point: { x: 2045, y: 2051 } }];
  const mapping = measuredMapping(makeEvidence({ dwells, turns, about: { x: 2048, y: 2048 } }));
  expect(mapping?.x.centre).toBe(2043);
  expect(mapping?.y.centre).toBe(2051);
  expect(mapping?.x.min).toBeCloseTo(1048, 9);
  expect(mapping?.x.max).toBeCloseTo(3048, 9);
});

test('without a rest, without a turn, or with a rest beyond the extents nothing is said', () => {
  expect(measuredMapping(makeEvidence({ dwells: null, turns }))).toBeNull();
  expect(measuredMapping(makeEvidence({ dwells: [{ point: { x: 2048, y: 2048 } }], turns: null }))).toBeNull();
  expect(measuredMapping(makeEvidence({ dwells: [{ point: { x: 10, y: 2048 } }], turns }))).toBeNull();
});
