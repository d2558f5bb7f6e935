import { expect, test } from 'vitest';
import { ReleaseRecord } from '../../../renderer/surveys/release-record.ts';
import { surveyState } from '../support/survey-states.ts';

function releases(taken: number): { taken: number; asked: number } {
  return { taken, asked: 24 };
}

test('remembers the direction that was asked for when a release counts', () => {
  const record = new ReleaseRecord();
  record.take(surveyState({ toward: 55 }));
  record.take(surveyState({ toward: null, phase: 'dwelling' }));
  record.take(surveyState({ toward: 200, releases: releases(1) }));
  record.take(surveyState({ toward: 10, releases: releases(2) }));
  expect(record.directions).toEqual([55, 200]);
});

test('a release that is repeated is taken out again', () => {
  const record = new ReleaseRecord();
  record.take(surveyState({ toward: 55 }));
  record.take(surveyState({ toward: 90, releases: releases(1) }));
  record.take(surveyState({ toward: 55, releases: releases(0) }));
  expect(record.directions).toEqual([]);
});

test('begins anew with the other stick', () => {
  const record = new ReleaseRecord();
  record.take(surveyState({ toward: 55 }));
  record.take(surveyState({ toward: 90, releases: releases(1) }));
  record.take(surveyState({ stick: 'right', toward: 0 }));
  expect(record.directions).toEqual([]);
});
