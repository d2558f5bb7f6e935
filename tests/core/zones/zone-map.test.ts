import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contourSegments } from '../../../core/plot/contours.ts';
import { mapFigure, mapLevel } from '../../../core/plot/map-figure.ts';
import { stageCurves } from '../../../core/plot/stage-curves.ts';
import { stagesFigure } from '../../../core/plot/stages-figure.ts';
import type { Stage } from '../../../core/zones/chain.ts';
import { deadOutline } from '../../../core/zones/dead-outline.ts';
import { compileChain } from '../../../core/zones/run-chain.ts';
import { signalPath } from '../../../core/zones/stage-outputs.ts';
import { zoneMap } from '../../../core/zones/zone-map.ts';
import { sensorFields } from '../../support/fields.ts';

const scaled: Stage = { zone: 'scaledRadial', inner: 0.2, outer: 1 };
const curve: Stage = { curve: { exponent: 2 } };
/** One of each kind that takes the eight mirror images of a deflection for the same. */
const alike: readonly Stage[] = [
  scaled,
  curve,
  { zone: 'axial', inner: 0.13 },
  { zone: 'axial', inner: 0.13, outer: 0.9, rescale: true },
  { zone: 'radial', inner: 0.21 },
  { zone: 'slopedAxial', inner: 0.07, slope: 0.3 },
  { minimumOutput: 0.1 },
  { limit: 'axis' },
  { limit: 'radial' },
  { shape: 'discToSquare', map: 'elliptical' },
  { shape: 'squareToDisc', map: 'squircular' },
  { quantise: { bits: 5, levels: 'even' } },
  { digital: { ways: 4, threshold: 0.4 } },
  { digital: { ways: 8, threshold: 0.4 } },
];
const axis = { min: 1048, centre: 2048, max: 3048 };

describe('zoneMap', () => {
  it('holds at each cell what the chain makes of its middle', () => {
    const map = zoneMap({ stages: [scaled] }, 4, 1);
    // The first row is the top; its middles lie at ±0.25 and ±0.75.
    expect(map[0]).toBeCloseTo(1, 6);
    expect(map[5]).toBeCloseTo((Math.hypot(0.25, 0.25) - 0.2) / 0.8, 6);
    expect([...map].reverse()).toEqual([...map]);
  });

  it('is the same, mirrored or not, whatever the stages and the size', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...alike), { maxLength: 3 }),
        fc.integer({ min: 1, max: 9 }),
        (stages, size) => {
          const run = compileChain({ stages });
          const out = new Float64Array(2);
          const [cell, extent] = [2.2 / size, 1.1];
          const direct = Array.from({ length: size * size }, (_, place) => {
            run(((place % size) + 0.5) * cell - extent, extent - (Math.floor(place / size) + 0.5) * cell, out);
            return Math.hypot(out[0]!, out[1]!);
          });
          zoneMap({ stages }, size, extent).forEach((value, place) => expect(value).toBeCloseTo(direct[place]!, 6));
        },
      ),
      { seed: 41, numRuns: 300 },
    );
  });

  it('keeps the settings of each sector', () => {
    const sectors = [0.1, 0.9, 0.1, 0.1].map((inner) => ({ inner, outer: 1 }));
    const map = zoneMap({ stages: [{ zone: 'sector', blend: false, sectors }] }, 3, 1);
    // Up is closed, right, left and down are open.
    expect([map[1], map[3], map[5], map[7]].map((value) => value !== 0)).toEqual([false, true, true, true]);
  });
});

describe('signalPath', () => {
  it('tells what stands before the first stage and after each, those switched off too', () => {
    const path = signalPath([scaled, { ...curve, off: true }, curve])(0.6, 0);
    expect([...path].map((value) => Number(value.toFixed(6)))).toEqual([0.6, 0.5, 0.5, 0.25]);
  });
});

describe('deadOutline', () => {
  it('is the circle of a radial zone in raw counts, and null where nothing stays silent', () => {
    const outline = deadOutline({ x: axis, y: axis }, sensorFields, compileChain({ stages: [scaled] }))!;
    for (let i = 0; i < outline.length; i += 2)
      expect(Math.hypot(outline[i]! - 2048, outline[i + 1]! - 2048)).toBeCloseTo(200, 3);
    expect(deadOutline({ x: axis, y: axis }, sensorFields, compileChain({ stages: [] }))).not.toBeNull();
    const even: Stage = { quantise: { bits: 4, levels: 'even' } };
    expect(deadOutline({ x: axis, y: axis }, sensorFields, compileChain({ stages: [even] }))).toBeNull();
  });
});

describe('contourSegments', () => {
  it('lie where the height is the level', () => {
    const size = 21;
    const heights = Array.from({ length: size * size }, (_, i) =>
      Math.hypot((i % size) - 10, Math.floor(i / size) - 10),
    );
    const segments = contourSegments(heights, size, 6);
    const points = segments.filter((value) => !Number.isNaN(value));
    expect(points.length).toBeGreaterThan(40);
    for (let i = 0; i < points.length; i += 2)
      expect(Math.abs(Math.hypot(points[i]! - 10, points[i + 1]! - 10) - 6)).toBeLessThan(0.1);
  });

  it('are none where nothing crosses the level', () => {
    expect(contourSegments(new Float32Array(25), 5, 0.5)).toEqual([]);
  });
});

describe('the figures', () => {
  const room = { width: 300, height: 240, letter: 11 };

  it('of the map cover the plane once with runs of one level', () => {
    const [cells, lines] = [40, 80].map((size) => ({ outputs: zoneMap({ stages: [scaled] }, size, 1), size }));
    const figure = mapFigure({ cells: cells!, lines: lines!, extent: 1, sticks: [] }, room);
    const edge = figure.marks.find(({ role }) => role === 'zone');
    const ends = edge?.kind === 'path' ? [...edge.d.matchAll(/([\d.]+) ([\d.]+)/gu)] : [];
    for (const [, x, y] of ends)
      expect(Math.hypot(figure.x.invert(Number(x)), figure.y.invert(Number(y)))).toBeCloseTo(0.2, 1);
    expect(ends.length).toBeGreaterThan(20);
    const cell = (figure.x.at(1) - figure.x.at(-1)) / 40;
    const covered = figure.runs.reduce((sum, run) => sum + Math.round((run.width - 0.3) / cell), 0);
    expect(covered).toBe(1600);
    expect([0, 1e-9, 0.05, 0.95, 1, 1.3].map(mapLevel)).toEqual([0, 1, 1, 10, 10, 10]);
  });

  it('of the signal path have a curve for the pad and for each stage, and mark what one takes', () => {
    const rest = { x: 2048, y: 2048 };
    const curves = stageCurves({ x: axis, y: axis }, sensorFields, rest, { x: 3048, y: 2048 }, [scaled, curve]);
    expect(curves.after.map((one) => Number(one.at(-1)?.toFixed(6)))).toEqual([1, 1, 1]);
    expect(curves.after[1]?.[100]).toBeCloseTo(0.375, 6);
    const drawn = (selected: number | null) => stagesFigure(curves, ['pad', '1', '2'], selected, room).marks;
    expect(drawn(null).filter(({ role }) => role === 'evidence')).toEqual([]);
    expect(drawn(1).filter(({ role }) => role === 'evidence').length).toBeGreaterThan(0);
    for (const mark of drawn(1)) if (mark.kind === 'text') expect(mark.x).toBeLessThanOrEqual(room.width);
  });
});
