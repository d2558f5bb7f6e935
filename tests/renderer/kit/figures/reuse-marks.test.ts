import { describe, expect, it } from 'vitest';
import { line, text } from '../../../../core/plot/marks.ts';
import { reuseMarks } from '../../../../renderer/kit/figures/reuse-marks.ts';

describe('reuseMarks', () => {
  it('keeps the object of a mark that is the same, and takes every other', () => {
    const before = [line('grid', null, 0, 0, 1, 1), line('grid', null, 0, 5, 1, 5), text('label', null, 1, 1, 'a')];
    const next = [line('grid', null, 0, 0, 1, 1), line('grid', 'now', 0, 5, 1, 5), text('label', null, 1, 1, 'b')];
    const kept = reuseMarks(before, [...next, line('axis', null, 0, 0, 2, 2)]);
    expect(kept.map((mark) => before.indexOf(mark))).toEqual([0, -1, -1, -1]);
    expect(kept[2]).toBe(next[2]);
  });

  it('does not take a mark of another kind for the same', () => {
    const before = [line('rest', null, 1, 1, 1, 1)];
    const [kept] = reuseMarks(before, [{ kind: 'dot', role: 'rest', tone: null, x: 1, y: 1, radius: 1 }]);
    expect(kept?.kind).toBe('dot');
  });
});
