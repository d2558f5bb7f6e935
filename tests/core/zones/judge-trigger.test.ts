import { describe, expect, it } from 'vitest';
import type { Consumer } from '../../../core/zones/consumer.ts';
import { judgeTrigger } from '../../../core/zones/judge-trigger.ts';

const consumer: Consumer = {
  kind: 'stickwright-consumer',
  version: 1,
  name: 'test',
  takes: 'driver',
  chains: { trigger: { stages: [{ zone: 'axial', inner: 0.1, outer: 1, rescale: true }] } },
  needs: 0.9,
  source: null,
};

describe('judgeTrigger', () => {
  it('tells what comes out of a trigger that is free and of one that is pulled', () => {
    const answer = judgeTrigger({ min: 20, max: 255, fieldMinimum: 0, fieldMaximum: 255 }, consumer, null);
    expect(answer).toEqual({ atRest: 0, atFull: 1, reaches: true });
  });

  it('lets a free trigger leak and a short one miss the need', () => {
    const answer = judgeTrigger({ min: 51, max: 204, fieldMinimum: 0, fieldMaximum: 255 }, consumer, null);
    expect(answer?.atRest).toBeCloseTo((0.2 - 0.1) / 0.9, 12);
    expect(answer?.atFull).toBeCloseTo((0.8 - 0.1) / 0.9, 12);
    expect(answer?.reaches).toBe(false);
  });

  it('answers nothing for a field without travel or a consumer without triggers', () => {
    expect(judgeTrigger({ min: 0, max: 0, fieldMinimum: 0, fieldMaximum: 0 }, consumer, null)).toBeNull();
    const none = { ...consumer, chains: {} };
    expect(judgeTrigger({ min: 0, max: 255, fieldMinimum: 0, fieldMaximum: 255 }, none, null)).toBeNull();
  });
});
