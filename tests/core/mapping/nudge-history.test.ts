import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import {
  historyFromRows,
  historyRows,
  NO_HISTORY,
  redo,
  takeStep,
  undo,
  type NudgeHistory,
} from '../../../core/mapping/nudge-history.ts';

function mappingOf(max: number): StickMapping {
  return { x: { min: 0, centre: 1, max }, y: { min: 0, centre: 1, max: 9 } };
}

function taken(values: readonly number[]): NudgeHistory {
  return values.reduce<NudgeHistory>((history, value) => takeStep(history, mappingOf(value)), NO_HISTORY);
}

describe('a history of nudges', () => {
  it('goes back to having no mapping of one’s own, and forth again', () => {
    const back = undo(undo(taken([10, 11])));
    expect(back.present).toBeNull();
    expect(redo(redo(back)).present).toEqual(mappingOf(11));
    expect(undo(back)).toBe(back);
  });

  it('forgets what was undone once another step is taken', () => {
    const other = takeStep(undo(taken([10, 11])), mappingOf(20));
    expect(redo(other)).toBe(other);
    expect(undo(other).present).toEqual(mappingOf(10));
  });

  it('takes a drag as one step, and the next drag as another', () => {
    let history = taken([10]);
    for (const value of [11, 12, 13]) history = takeStep(history, mappingOf(value), 'drag-1');
    for (const value of [14, 15]) history = takeStep(history, mappingOf(value), 'drag-2');
    expect(undo(history).present).toEqual(mappingOf(13));
    expect(undo(undo(history)).present).toEqual(mappingOf(10));
  });

  it('does not take an equal mapping as a step', () => {
    const history = taken([10]);
    expect(takeStep(history, mappingOf(10))).toBe(history);
  });

  it('undoes every one of ten thousand steps', () => {
    let history = taken(Array.from({ length: 10_000 }, (_, index) => index + 2));
    let steps = 0;
    while (history.past !== null) {
      history = undo(history);
      steps += 1;
    }
    expect([steps, history.present]).toEqual([10_000, null]);
  });

  it('comes back from its rows as it was, wherever it stands', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 2, max: 4095 }), { maxLength: 20 }), fc.nat(20), (values, back) => {
        let history = taken(values);
        for (let step = 0; step < back; step += 1) history = undo(history);
        const { rows, at } = historyRows(history);
        const again = historyFromRows(rows, at);
        expect(historyRows(again)).toEqual({ rows, at });
        expect(undo(again).present).toEqual(undo(history).present);
        expect(redo(again).present).toEqual(redo(history).present);
      }),
      { seed: 5, numRuns: 100 },
    );
  });

  it('is none where the rows do not hold the place it is to stand at', () => {
    expect(historyFromRows([null], 3)).toBe(NO_HISTORY);
  });
});
