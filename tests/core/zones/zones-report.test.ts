import { expect, it } from 'vitest';
import { answerTrack } from '../../../core/zones/zones-report.ts';
import { reportedFields } from '../../support/fields.ts';
import { makeSurveyTrack } from '../../support/make-survey-track.ts';

it('answerTrack answers each stick of a log under its mapping', () => {
  const track = makeSurveyTrack({
    fields: reportedFields,
    rest: { x: 130, y: 124 },
    gate: 110,
    releases: 12,
    turnsEachWay: 3,
  });
  const stages = [{ zone: 'radial', inner: 0.2 }] as const;
  const chain = { kind: 'stickwright-chain', version: 1, name: 'usual', stages, needs: null } as const;
  const report = answerTrack(track, null, chain);
  expect(report).toMatchObject({ kind: 'stickwright-zones', version: 1, chain: 'usual' });
  expect(Object.keys(report.sticks)).toEqual(['left']);
  const { left } = report.sticks;
  expect(left).toMatchObject({ mappingFrom: 'range', hides: 'hidden', leaks: { releases: 12, leaking: 0 } });
  // The rest lies 2.5 counts right of and 3.5 above the middle of 0 … 255, y growing downwards.
  const [x, y] = [2.5 / 127.5, 3.5 / 127.5];
  expect(left?.onset?.[0]?.deflection).toBeCloseTo(Math.sqrt(0.04 - y * y) - x, 8);
  expect(left?.onset?.[54]?.deflection).toBeCloseTo(Math.sqrt(0.04 - x * x) + y, 8);
  const centred = { x: { min: 0, centre: 130, max: 255 }, y: { min: 0, centre: 124, max: 255 } };
  const given = answerTrack(track, { left: centred }, chain).sticks.left;
  expect(given?.mappingFrom).toBe('file');
  expect(given?.unevenness).toBeCloseTo(0, 8);
});
