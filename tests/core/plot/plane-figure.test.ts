import { describe, expect, it } from 'vitest';
import type { Figure, Mark } from '../../../core/plot/figure.ts';
import { planeAngle, planeFigure, planeRay } from '../../../core/plot/plane-figure.ts';
import type { PlaneInput } from '../../../core/plot/plane-input.ts';

const room = { width: 324, height: 240, letter: 11 };
const fields = { x: { minimum: 0, maximum: 4095, up: 1 }, y: { minimum: 0, maximum: 4095, up: -1 } } as const;

function ring(radius: number, x = 2000, y = 2000): number[] {
  return Array.from({ length: 73 }, (_, index) => {
    const turn = (index * Math.PI) / 36;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  }).flat();
}

function input(part: Partial<PlaneInput>): PlaneInput {
  return {
    fields,
    series: [{ tone: 'now', unit: ring(1300), zone: ring(100), centre: { x: 2000, y: 2000 } }],
    rests: [
      { x: 1990, y: 2000 },
      { x: 2010, y: 2000 },
    ],
    trace: ring(1200),
    about: { x: 2000, y: 2000 },
    ...part,
  };
}

function ofRole(figure: Figure | readonly Mark[], role: string): Mark[] {
  const marks = 'marks' in figure ? figure.marks : figure;
  return marks.filter((mark) => mark.role === role);
}

function words(figure: Figure): string[] {
  return figure.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
}

describe('planeFigure', () => {
  it('gives equal counts equal lengths on both axes', () => {
    const figure = planeFigure(input({}), room);
    expect(Math.abs(figure.x.at(1000) - figure.x.at(0))).toBeCloseTo(Math.abs(figure.y.at(1000) - figure.y.at(0)), 9);
  });

  it('draws physical up as up where the count shrinks upwards', () => {
    const figure = planeFigure(input({}), room);
    expect(figure.y.at(1000)).toBeLessThan(figure.y.at(3000));
    const grows = planeFigure(input({ fields: { x: fields.x, y: { ...fields.y, up: 1 } } }), room);
    expect(grows.y.at(1000)).toBeGreaterThan(grows.y.at(3000));
  });

  it('draws right as right where the count shrinks to the right', () => {
    const figure = planeFigure(input({ fields: { x: { ...fields.x, up: -1 }, y: fields.y } }), room);
    expect(figure.x.at(1000)).toBeGreaterThan(figure.x.at(3000));
  });

  it('says which edge is up and which is right', () => {
    expect(words(planeFigure(input({}), room))).toEqual(expect.arrayContaining(['↑ up', 'right →']));
  });

  it('holds the gate, the unit circles and the rest inside its frame', () => {
    const { x, y, frame } = planeFigure(input({}), room);
    for (const value of [700, 3300]) {
      expect(x.at(value)).toBeGreaterThan(frame.x);
      expect(x.at(value)).toBeLessThan(frame.x + frame.width);
      expect(y.at(value)).toBeGreaterThan(frame.y);
      expect(y.at(value)).toBeLessThan(frame.y + frame.height);
    }
  });

  it('draws a limit of the field only where it falls inside the picture', () => {
    expect(ofRole(planeFigure(input({}), room), 'limit')).toHaveLength(0);
    const narrow = { x: { minimum: 1000, maximum: 3000, up: 1 }, y: fields.y } as const;
    expect(ofRole(planeFigure(input({ fields: narrow }), room), 'limit')).toHaveLength(2);
  });

  it('magnifies the rest by a round factor and says so beside a bar of round counts', () => {
    const texts = words(planeFigure(input({}), room));
    const times = texts.find((text) => text.startsWith('rest ×'));
    expect(times).toMatch(/^rest ×[1-9]0*$/);
    expect(texts.some((text) => /^[125]0* counts?$/.test(text))).toBe(true);
  });

  it('lets the cloud decide the magnification where the edge of the zone would make it a speck', () => {
    const speck = input({
      rests: [
        { x: 1999, y: 2000 },
        { x: 2001, y: 2000 },
      ],
      series: [{ tone: 'now', unit: ring(1300), zone: ring(400), centre: { x: 2000, y: 2002 } }],
    });
    const figure = planeFigure(speck, room);
    const zones = ofRole(figure, 'zone');
    expect(zones.at(-1)).toMatchObject({ d: '' });
    const dots = ofRole(figure, 'rest').slice(-2);
    const [one, two] = dots.map((mark) => (mark.kind === 'dot' ? mark.x : 0));
    expect((two ?? 0) - (one ?? 0)).toBeGreaterThan(11);
  });

  it('draws no inset without a rest and no gate without a rim', () => {
    const figure = planeFigure(input({ rests: [], trace: null }), room);
    expect(ofRole(figure, 'rest')).toHaveLength(0);
    expect(ofRole(figure, 'gate')).toHaveLength(0);
    expect(words(figure).some((text) => text.startsWith('rest'))).toBe(false);
  });
});

describe('planeAngle', () => {
  it('measures counter-clockwise from right about the rest', () => {
    const figure = planeFigure(input({}), room);
    const x = figure.x.at(2000);
    const y = figure.y.at(2000);
    expect(planeAngle(figure, x + 10, y)).toBeCloseTo(0, 9);
    expect(planeAngle(figure, x, y - 10)).toBeCloseTo(90, 9);
    expect(planeAngle(figure, x - 10, y)).toBeCloseTo(180, 9);
    expect(planeAngle(figure, x, y + 10)).toBeCloseTo(270, 9);
  });
});

describe('planeRay', () => {
  it('goes from the rest to the rim point, turned into counts as reported', () => {
    const figure = planeFigure(input({}), room);
    const [ray] = planeRay(figure, 90, { x: 0, y: 1200 }, 11);
    expect(ray).toMatchObject({ x2: figure.x.at(2000), y2: figure.y.at(800) });
  });

  it('goes to the edge of the picture where the direction has no rim point', () => {
    const figure = planeFigure(input({}), room);
    const [ray] = planeRay(figure, 0, null, 11);
    expect(ray?.kind === 'path' ? ray.d : '').toContain(
      `L${Math.round((figure.frame.x + figure.frame.width) * 100) / 100} `,
    );
  });
});
