import { describe, expect, it } from 'vitest';
import { planeFigure } from '../../../core/plot/plane-figure.ts';
import type { PlaneInput } from '../../../core/plot/plane-input.ts';
import { planeSample, restAt } from '../../../core/plot/sample-marks.ts';

const room = { width: 324, height: 240, letter: 11 };
const fields = { x: { minimum: 0, maximum: 4095, up: 1 }, y: { minimum: 0, maximum: 4095, up: -1 } } as const;
const rests = [
  { x: 1990, y: 2000 },
  { x: 2010, y: 2000 },
];
const unit = [700, 2000, 2000, 700, 3300, 2000, 2000, 3300];
const input: PlaneInput = {
  fields,
  series: [{ tone: 'now', unit, zone: null, centre: { x: 2000, y: 2000 } }],
  rests,
  trace: null,
  about: { x: 2000, y: 2000 },
};

describe('a sample over the plane', () => {
  it('is ringed in the plane and in the magnified rest where it lies inside of it', () => {
    const figure = planeFigure(input, room);
    const [inPlane, inRest] = planeSample(figure, rests[0]!, room.letter);
    expect(inPlane).toMatchObject({ kind: 'dot', x: figure.x.at(1990), y: figure.y.at(2000) });
    expect(inRest).toMatchObject({ kind: 'dot', x: figure.inset!.x.at(1990), y: figure.inset!.y.at(2000) });
    expect(planeSample(figure, { x: 3000, y: 2000 }, room.letter)).toHaveLength(1);
  });

  it('is found from the dot of its release, and from nowhere else', () => {
    const figure = planeFigure(input, room);
    const at = (index: number) => [figure.inset!.x.at(rests[index]!.x), figure.inset!.y.at(rests[index]!.y)] as const;
    expect(restAt(figure, rests, ...at(0), room.letter)).toBe(0);
    expect(restAt(figure, rests, at(1)[0] + 3, at(1)[1], room.letter)).toBe(1);
    expect(restAt(figure, rests, at(1)[0] + 30, at(1)[1] + 30, room.letter)).toBeNull();
    expect(restAt(planeFigure({ ...input, rests: [] }, room), [], ...at(0), room.letter)).toBeNull();
  });

  it('of the survey before, its gate and rest points are marked apart from those of the shown one', () => {
    const before = { trace: unit, rests: [{ x: 1995, y: 1995 }] };
    const marks = planeFigure({ ...input, trace: unit, before }, room).marks;
    const of = (role: string, tone: string | null) => marks.filter((mark) => mark.role === role && mark.tone === tone);
    expect(of('gate', 'before')).toHaveLength(1);
    expect(of('gate', null)).toHaveLength(1);
    // A dot in the plane and a cross in the magnified rest.
    expect(of('rest', 'before').map(({ kind }) => kind)).toEqual(['dot', 'path']);
    expect(planeFigure(input, room).marks.filter(({ tone }) => tone === 'before')).toEqual([]);
  });
});
