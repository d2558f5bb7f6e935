import { describe, expect, it } from 'vitest';
import { partUnpushed } from '../../../../core/capture/evidence/part-unpushed.ts';
import { makeDwell } from '../../../support/make-evidence.ts';
import { StickStory } from '../../../support/stick-story.ts';

const REST = { x: 2048, y: 2048 };
/** One second each: pushed by so many counts for half of it, then at rest; a dwell in the middle of that rest. */
function told(...pushes: readonly number[]) {
  const story = new StickStory();
  for (const push of pushes) {
    story.move(0.5, () => ({ x: REST.x + push, y: REST.y }));
    story.move(0.5, () => REST);
  }
  const track = story.track().sticks.left!;
  const dwells = pushes.map((_, i) => makeDwell({ point: REST, seconds: i + 0.75 }));
  return { track, dwells };
}
const numbersOf = (pushes: readonly number[], gaps: readonly { t: number; lost: number | null }[] = []) => {
  const { track, dwells } = told(...pushes);
  return partUnpushed(track, dwells, gaps).unpushed.map(({ number }) => number);
};

describe('releases that no push came before', () => {
  it('are those since whose forerunner the stick stayed within 15 % of the half range, by their number among all', () => {
    // 0.15 · 4095 / 2 = 307.1 counts.
    expect(numbersOf([1000, 1000, 307, 308, 0, -308])).toEqual([3, 5]);
    expect(numbersOf([1000, 1000, 1000])).toEqual([]);
  });

  it('are never the first, of which nobody knows, nor one after a gap', () => {
    expect(numbersOf([0, 1000])).toEqual([]);
    expect(numbersOf([1000, 0, 1000, 0], [{ t: 1.2e6, lost: 3 }])).toEqual([4]);
  });

  it('are all, the first too, of a stick that never left its rest in the whole log', () => {
    expect(numbersOf([0, 0, 0])).toEqual([1, 2, 3]);
    expect(numbersOf([0, 0, 0], [{ t: 1e5, lost: 3 }])).toEqual([2, 3]);
  });

  it('leave the others, in their order', () => {
    const { track, dwells } = told(1000, 0, 1000);
    expect(partUnpushed(track, dwells, []).pushed).toEqual([dwells[0], dwells[2]]);
  });
});
