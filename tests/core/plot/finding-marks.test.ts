import { describe, expect, it } from 'vitest';
import { planeEvidence, profileEvidence, railsEvidence } from '../../../core/plot/finding-marks.ts';
import { planeFigure } from '../../../core/plot/plane-figure.ts';
import { profileFigure } from '../../../core/plot/profile-figure.ts';
import { railsFigure } from '../../../core/plot/rails-figure.ts';

const fields = { x: { minimum: 0, maximum: 4095, up: 1 }, y: { minimum: 0, maximum: 4095, up: -1 } } as const;
const states = new Array<'covered'>(72).fill('covered');
const profile = profileFigure({ series: [], states, atLeast: [] }, { width: 800, height: 300, letter: 11 });
const rails = railsFigure({ fields, series: [], extents: null, rests: [] }, { width: 700, height: 150, letter: 11 });

describe('profileEvidence', () => {
  it('spans each stretch by half a step to both sides', () => {
    const marks = profileEvidence(profile, [40, 45, 50, 200], 11);
    const bars = marks.flatMap((mark) => (mark.kind === 'line' && mark.y1 === mark.y2 ? [[mark.x1, mark.x2]] : []));
    expect(bars).toEqual([
      [profile.direction.at(37.5), profile.direction.at(52.5)],
      [profile.direction.at(197.5), profile.direction.at(202.5)],
    ]);
  });

  it('is nothing without directions', () => {
    expect(profileEvidence(profile, [], 11)).toEqual([]);
  });
});

describe('planeEvidence', () => {
  it('draws an arc at the radius asked for, up being up although the count falls', () => {
    const plane = planeFigure(
      { fields, series: [], rests: [], trace: [1000, 1000, 3000, 3000], about: { x: 2000, y: 2000 } },
      { width: 300, height: 200, letter: 11 },
    );
    const [arc] = planeEvidence(plane, [90], 900);
    const points =
      arc?.kind === 'path'
        ? [...arc.d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)].map(([, x, y]) => [Number(x), Number(y)])
        : [];
    expect(points).toHaveLength(3);
    expect(points[1]?.[0]).toBeCloseTo(plane.x.at(2000), 1);
    expect(points[1]?.[1]).toBeCloseTo(plane.y.at(1100), 1);
  });
});

describe('railsEvidence', () => {
  it('spans the counts on the rail of their axis', () => {
    const [bar] = railsEvidence(rails, fields, [{ axis: 'y', from: 1000, to: 2000 }], 11);
    const ends = bar?.kind === 'line' ? [bar.x1, bar.x2] : [];
    expect(ends[0]).toBeCloseTo(rails.y.at(1000), 9);
    expect(ends[1]).toBeCloseTo(rails.y.at(2000), 9);
    expect(bar?.kind === 'line' ? bar.y1 : 0).toBeGreaterThan(rails.yAt);
  });

  it('shows one count wide enough to be seen, and never beyond the field', () => {
    const [one] = railsEvidence(rails, fields, [{ axis: 'x', from: 2000, to: 2000 }], 11);
    expect(one?.kind === 'line' ? one.x2 - one.x1 : 0).toBeGreaterThan(4);
    const [beyond] = railsEvidence(rails, fields, [{ axis: 'x', from: 4000, to: 9999 }], 11);
    expect(beyond).toMatchObject({ x2: rails.x.at(4095) });
  });
});
