import { describe, expect, it } from 'vitest';
import type { Mark } from '../../../core/plot/figure.ts';
import { railsFigure, railsTicks, type RailsInput } from '../../../core/plot/rails-figure.ts';

const room = { width: 700, height: 150, letter: 11 };
const fields = { x: { minimum: 0, maximum: 4095, up: 1 }, y: { minimum: 0, maximum: 4095, up: -1 } } as const;
const now = { x: { min: 803, centre: 2066, max: 3406 }, y: { min: 697, centre: 2020, max: 3350 } };
const proposed = { x: { min: 952, centre: 2114, max: 3365 }, y: { min: 837, centre: 1975, max: 3180 } };

const input: RailsInput = {
  fields,
  series: [
    { tone: 'now', mapping: now },
    { tone: 'proposed', mapping: proposed },
  ],
  extents: { xMin: 924, xMax: 3393, yMin: 805, yMax: 3210 },
  rests: [
    { x: 2110, y: 1970 },
    { x: 2118, y: 1980 },
  ],
};

function texts(marks: readonly Mark[], role: string): { text: string; x: number; y: number }[] {
  return marks.flatMap((mark) => (mark.kind === 'text' && mark.role === role ? [mark] : []));
}

describe('railsFigure', () => {
  it('writes the numbers of the leading mapping over their places', () => {
    const figure = railsFigure(input, room);
    expect(texts(figure.marks, 'value').map((mark) => mark.text)).toEqual([
      '952',
      '2114',
      '3365',
      '837',
      '1975',
      '3180',
    ]);
    expect(texts(figure.marks, 'value')[1]?.x).toBeCloseTo(figure.x.at(2114), 6);
  });

  it('puts +1 at the high end of an axis that grows upwards and at the low end of one that shrinks', () => {
    const figure = railsFigure(input, room);
    const plus = texts(figure.marks, 'deflection').filter((mark) => mark.text === '+1');
    expect(plus[0]?.x).toBeCloseTo(figure.x.at(3365), 6);
    expect(plus[1]?.x).toBeCloseTo(figure.y.at(837), 6);
  });

  it('puts half deflection halfway between the centre and the edge', () => {
    const figure = railsFigure(input, room);
    const half = texts(figure.marks, 'deflection').find((mark) => mark.text === '+0.5');
    expect(half?.x).toBeCloseTo(figure.x.at((2114 + 3365) / 2), 6);
  });

  it('says which end is left, right, up and down', () => {
    const labels = texts(railsFigure(input, room).marks, 'label');
    const at = (word: string): number => labels.find((mark) => mark.text === word)?.x ?? Number.NaN;
    expect(at('left')).toBeLessThan(at('right'));
    expect(at('up')).toBeLessThan(at('down'));
  });

  it('marks the mapping of now by dashed lines and the proposal by pointers', () => {
    const marks = railsFigure(input, room).marks.filter((mark) => mark.role === 'mark');
    expect(marks.filter((mark) => mark.tone === 'now' && mark.kind === 'line')).toHaveLength(6);
    expect(marks.filter((mark) => mark.tone === 'proposed' && mark.kind === 'path')).toHaveLength(6);
  });

  it('draws the measured extents and one tick a release', () => {
    const figure = railsFigure(input, room);
    const extents = figure.marks.filter((mark) => mark.role === 'extent');
    expect(extents[0]).toMatchObject({ x: figure.x.at(924), width: figure.x.at(3393) - figure.x.at(924) });
    expect(figure.marks.filter((mark) => mark.role === 'rest')).toHaveLength(4);
  });

  it('stands on the mapping of now alone where there is no proposal', () => {
    const figure = railsFigure({ ...input, series: input.series.slice(0, 1), extents: null, rests: [] }, room);
    expect(texts(figure.marks, 'value').map((mark) => mark.text)).toContain('2066');
    expect(figure.marks.some((mark) => mark.role === 'extent' || mark.role === 'rest')).toBe(false);
  });

  it('keeps the numbers of a narrow mapping from lying on each other', () => {
    const narrow = { x: { min: 2040, centre: 2048, max: 2056 }, y: proposed.y };
    const values = texts(
      railsFigure({ ...input, series: [{ tone: 'proposed', mapping: narrow }] }, room).marks,
      'value',
    );
    const xs = values.slice(0, 3).map((mark) => mark.x);
    expect((xs[1] ?? 0) - (xs[0] ?? 0)).toBeGreaterThan(4 * 11 * 0.6);
    expect((xs[2] ?? 0) - (xs[1] ?? 0)).toBeGreaterThan(4 * 11 * 0.6);
  });
});

describe('railsTicks', () => {
  it('shows the rim point of a direction on both rails', () => {
    const figure = railsFigure(input, room);
    const [x, y] = railsTicks(figure, { x: 3000, y: 900 }, 11);
    expect(x).toMatchObject({ x1: figure.x.at(3000), y1: figure.xAt - 11 });
    expect(y).toMatchObject({ x1: figure.y.at(900), y2: figure.yAt + 11 });
  });
});
