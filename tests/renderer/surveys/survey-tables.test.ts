import { expect, test } from 'vitest';
import { summariseSurvey, summaryTable, type StickSummary } from '../../../renderer/surveys/survey-summary.ts';
import { surveysTable } from '../../../renderer/surveys/surveys-table.ts';
import { makeEvidence } from '../../support/make-evidence.ts';
import { asSent, mapping, oneRelease, surveyOf } from '../support/bench-stick.ts';

test('surveys stand with the whole moment, and with the pad by what tells it from its like', () => {
  const survey = {
    survey: 's1',
    startedAt: '2024-05-01T10:00:00Z',
    stage: 'fitted' as const,
    product: 'Bench pad',
    name: 'Bench pad',
    simulated: false,
    finished: true,
    pad: { vendorId: 1, productId: 2, serial: null, unit: null },
    domain: 'sensor' as const,
  };
  const other = { ...survey, name: 'A log', stage: null, simulated: true, finished: false };
  expect(surveysTable([survey, other], [{ mark: 'A1B2' }, { mark: '2nd' }]).rows).toEqual([
    ['2024-05-01T10:00:00Z', 'fitted', 'Bench pad A1B2', 'finished'],
    ['2024-05-01T10:00:00Z', 'none', 'Bench pad (simulated) 2nd, A log', 'cut short'],
  ]);
});

test('the end of a survey tells what was taken of each stick, and all or none where no direction is named', () => {
  const stick: StickSummary = {
    stick: 'left',
    releases: 24,
    rest: '2071, 2029',
    turns: { clockwise: 3, counterClockwise: 2 },
    covered: 71,
    thin: 1,
    open: [],
    sweeps: 8,
    flicks: 4,
  };
  const nothing = { ...stick, rest: null, covered: 0, thin: 0, open: ['0° to 355°'] };
  expect(summaryTable([stick, nothing, { ...stick, open: ['5° to 20°', '90°'] }]).rows).toEqual([
    ['left', '24', '2071, 2029', '3', '2', '71', '1', 'none', '8', '4'],
    ['left', '24', '–', '3', '2', '0', '0', 'all', '8', '4'],
    ['left', '24', '2071, 2029', '3', '2', '71', '1', '5° to 20°, 90°', '8', '4'],
  ]);
});

test('a stick that only lay still has no release, and so no mean rest of releases', () => {
  const released = oneRelease();
  const still = { ...makeEvidence({}), still: released.rest?.dwells ?? [] };
  const details = surveyOf({ left: asSent(released, mapping), right: asSent(still, mapping) });
  expect(summariseSurvey(details).map(({ releases, rest }) => [releases, rest])).toEqual([
    [1, '2030, 2000'],
    [0, null],
  ]);
});
