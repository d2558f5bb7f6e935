import { describe, expect, it } from 'vitest';
import type { Mark } from '../../../core/plot/figure.ts';
import { guardBand, guardBandFigure, type GuardBandInput } from '../../../core/plot/guard-band-figure.ts';

const room = { width: 300, height: 44, letter: 11 };

function figureOf(part: Partial<GuardBandInput>): ReturnType<typeof guardBandFigure> {
  const input = { value: 3.2, u95: 0.4, limit: 2, write: (value: number) => value.toFixed(1), tick: String, ...part };
  return guardBandFigure(input, room);
}

function roleOf(marks: readonly Mark[], role: string): Mark[] {
  return marks.filter((mark) => mark.role === role);
}

describe('guardBand', () => {
  it('is the limit less and more the expanded uncertainty', () => {
    expect(guardBand(2, 0.4)).toEqual([1.6, 2.4]);
    expect(guardBand(0.2, 0.45)).toEqual([0, 0.65]);
  });

  it('is nothing without an uncertainty', () => {
    expect([guardBand(2, null), guardBand(2, 0)]).toEqual([null, null]);
  });
});

describe('guardBandFigure', () => {
  it('draws the value with its whisker and the limit on one scale that begins at nothing', () => {
    const { marks, scale, at } = figureOf({});
    expect(scale.domain[0]).toBe(0);
    expect(roleOf(marks, 'judged').find((mark) => mark.kind === 'dot')).toMatchObject({ x: scale.at(3.2), y: at });
    expect(roleOf(marks, 'judged')).toContainEqual(
      expect.objectContaining({ x1: scale.at(3.2 - 0.4), x2: scale.at(3.6) }),
    );
    expect(roleOf(marks, 'full')).toEqual([expect.objectContaining({ x1: scale.at(2), x2: scale.at(2) })]);
    expect(roleOf(marks, 'guard')).toHaveLength(1);
  });

  it('hatches the band about the limit and nothing beyond it', () => {
    const { marks, scale } = figureOf({});
    const [band] = roleOf(marks, 'guard');
    const places =
      band?.kind === 'path' ? [...band.d.matchAll(/[ML](-?[\d.]+)/gu)].map((match) => Number(match[1])) : [];
    expect(Math.min(...places)).toBeGreaterThanOrEqual(scale.at(1.6) - 0.01);
    expect(Math.max(...places)).toBeLessThanOrEqual(scale.at(2.4) + 0.01);
  });

  it('has neither band nor whisker without an uncertainty, and no value where none could be measured', () => {
    expect(roleOf(figureOf({ u95: null }).marks, 'guard')).toEqual([]);
    expect(roleOf(figureOf({ u95: null }).marks, 'judged')).toHaveLength(1);
    expect(roleOf(figureOf({ value: null, u95: null }).marks, 'judged')).toEqual([]);
  });

  it.each([
    [3.2, 0.4, 2],
    [0.1, 0.5, 2],
    [2, 0.01, 2],
    [40, 1, 2],
    [-3, 1, 2],
    [0, 0.1, 0],
    [8, null, 12],
  ])('keeps %d ± %d against %d and its words within the picture', (value, u95, limit) => {
    const { marks, scale } = figureOf({ value, u95, limit });
    // No magnitude lies below 0.
    const low = value < 0 ? value - (u95 ?? 0) : Math.max(0, value - (u95 ?? 0));
    for (const end of [value, limit, value + (u95 ?? 0), low]) {
      expect(scale.at(end)).toBeGreaterThanOrEqual(0);
      expect(scale.at(end)).toBeLessThanOrEqual(room.width);
    }
    const lines = marks.flatMap((mark) => (mark.kind === 'line' ? [mark.x1, mark.x2] : []));
    expect(Math.min(...lines)).toBeGreaterThanOrEqual(0);
    for (const mark of marks)
      if (mark.kind === 'text') expect(Number.isFinite(mark.x) && mark.x >= 0 && mark.x <= room.width).toBe(true);
  });

  it('never writes value and limit over each other', () => {
    const { marks } = figureOf({ value: 2, u95: 0.4, limit: 2 });
    const [limit, value] = ['label', 'value'].map((role) =>
      roleOf(marks, role).find((mark) => mark.kind === 'text' && (role === 'value' || mark.text.startsWith('limit'))),
    );
    const [from, to] = [limit, value].map((mark) => (mark?.kind === 'text' ? mark.x : Number.NaN));
    expect(Math.abs((from ?? 0) - (to ?? 0))).toBeGreaterThan(11 * 0.6 * 5);
  });
});
