import { describe, expect, it } from 'vitest';
import { hatch, pointer } from '../../../core/plot/marks.ts';

/** Every number of path data, x and y in turn. */
function numbers(d: string): number[] {
  return (d.match(/-?[\d.]+/g) ?? []).map(Number);
}

describe('hatch', () => {
  it('fills a box with slanted lines that stay inside it', () => {
    const box = { x: 100, y: 20, width: 40, height: 200 };
    const mark = hatch('uncovered', box, 8);
    const points = mark.kind === 'path' ? numbers(mark.d) : [];
    expect(points.length).toBeGreaterThan(40);
    points.forEach((value, index) => {
      const [from, size] = index % 2 === 0 ? [box.x, box.width] : [box.y, box.height];
      expect(value).toBeGreaterThanOrEqual(from - 0.01);
      expect(value).toBeLessThanOrEqual(from + size + 0.01);
    });
  });

  it('runs on across neighbouring boxes', () => {
    const one = hatch('uncovered', { x: 0, y: 0, width: 10, height: 10 }, 7);
    expect(one.kind === 'path' ? one.d : '').toBe('M0 7L7 0M4 10L10 4');
  });
});

describe('pointer', () => {
  it('stands on its tip', () => {
    const mark = pointer('mark', 'proposed', 50, 30, 10);
    expect(mark.kind === 'path' ? mark.d : '').toBe('M50 30L44.5 20L55.5 20Z');
  });
});
