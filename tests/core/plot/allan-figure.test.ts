import { describe, expect, it } from 'vitest';
import { allanFigure } from '../../../core/plot/allan-figure.ts';

const room = { width: 320, height: 200, letter: 10 };

function named(points: readonly number[]): string[] {
  return allanFigure([{ tone: 'now', points }], room).marks.flatMap((mark) =>
    mark.kind === 'text' && mark.role === 'label' ? [mark.text] : [],
  );
}

describe('allanFigure', () => {
  it('names the powers of ten around the points', () => {
    expect(named([0.004, 2, 3, 0.5])).toEqual(['0.001', '0.01', '0.1', '1', '10', '0.1', '1', '10']);
  });

  it('draws a slope of minus a half as a straight line of that slope', () => {
    const points = [0.01, 10, 1, 1, 100, 0.1];
    const { marks } = allanFigure([{ tone: 'now', points }], room);
    const path = marks.find(({ role }) => role === 'reach');
    const ends = path?.kind === 'path' ? (path.d.match(/-?\d+(?:\.\d+)?/gu) ?? []).map(Number) : [];
    expect(ends).toHaveLength(6);
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0] = ends;
    expect((y1 - y0) / (x1 - x0)).toBeCloseTo((y2 - y1) / (x2 - x1), 1);
  });

  it('leaves a gap where there is nothing above zero, and still draws axes of two decades without a point', () => {
    const { marks } = allanFigure([{ tone: 'now', points: [1, 1, 2, 0, 4, 1] }], room);
    const path = marks.find(({ role }) => role === 'reach');
    expect(path?.kind === 'path' ? path.d.match(/M/gu) : []).toHaveLength(2);
    expect(named([])).toEqual(['1', '10', '1', '10']);
  });
});
