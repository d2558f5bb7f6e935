/** The plane of deflections as a map of a chain's output: steps of tone with lines of equal output, rest and gate drawn in. */
import { contourSegments } from './contours.ts';
import type { Figure, Mark, Room, Tone } from './figure.ts';
import { linearScale, type LinearScale } from './linear-scale.ts';
import { dot, line, polyline, text } from './marks.ts';

/** Steps of tone from nothing to full output. */
export const MAP_LEVELS = 10;

/** A run of cells of one level. Level 0 is no output at all. */
export interface MapRun {
  readonly level: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Output magnitudes, size × size, from the top (core/zones/zone-map.ts). */
export interface OutputGrid {
  readonly outputs: Float32Array;
  readonly size: number;
}

export interface MapInput {
  /** What the steps of tone are drawn from. */
  readonly cells: OutputGrid;
  /** What the lines of equal output are drawn from: finer, for an edge shows its grid sooner than a tone. */
  readonly lines: OutputGrid;
  /** Deflection at the edge of the map. */
  readonly extent: number;
  /** Under each mapping the gate, x and y in turn as deflections, and the rest points. */
  readonly sticks: readonly {
    readonly tone: Tone;
    readonly gate: readonly number[];
    readonly rests: readonly number[];
  }[];
}

export interface MapFigure extends Figure {
  readonly runs: readonly MapRun[];
  readonly x: LinearScale;
  readonly y: LinearScale;
}

const LINES = [1e-6, 0.25, 0.5, 0.75, 0.999];

export function mapFigure({ cells, lines, extent, sticks }: MapInput, room: Room): MapFigure {
  const { letter } = room;
  const side = Math.max(letter * 4, Math.min(room.width - letter * 3.4, room.height - letter * 2.4));
  const left = letter * 2.8 + Math.max(0, (room.width - letter * 3.4 - side) / 2);
  const x = linearScale([-extent, extent], [left, left + side]);
  const y = linearScale([extent, -extent], [letter * 0.5, letter * 0.5 + side]);
  return {
    width: room.width,
    height: room.height,
    x,
    y,
    runs: runsOf(cells, x, y),
    marks: [
      ...LINES.map((level) => lineOf(lines, level, extent, x, y)),
      ...axes(extent, x, y, letter),
      ...sticks.flatMap(({ tone, gate, rests }) => [
        polyline('unit', tone, placed(gate, x, y), true),
        ...points(rests).map(([a, b]) => dot('rest', tone, x.at(a), y.at(b), Math.max(1, letter * 0.12))),
      ]),
    ],
  };
}

/** 0 for no output, else 1 … MAP_LEVELS. */
export function mapLevel(output: number): number {
  return output <= 0 ? 0 : Math.min(MAP_LEVELS, 1 + Math.floor(Math.min(output, 0.9999) * MAP_LEVELS));
}

/** Neighbours of one level in a row are one run. */
function runsOf({ outputs, size }: OutputGrid, x: LinearScale, y: LinearScale): MapRun[] {
  const cell = Math.abs(x.range[1] - x.range[0]) / size;
  const runs: MapRun[] = [];
  for (let row = 0; row < size; row += 1) {
    let from = 0;
    for (let column = 1; column <= size; column += 1) {
      const level = mapLevel(outputs[row * size + from] ?? 0);
      if (column < size && mapLevel(outputs[row * size + column] ?? 0) === level) continue;
      // A little wider than the cell, so that no seam of the paper shows between two runs.
      runs.push({
        level,
        x: x.range[0] + from * cell,
        y: y.range[0] + row * cell,
        width: (column - from) * cell + 0.3,
        height: cell + 0.3,
      });
      from = column;
    }
  }
  return runs;
}

function lineOf({ outputs, size }: OutputGrid, level: number, extent: number, x: LinearScale, y: LinearScale): Mark {
  const toDeflection = (place: number): number => ((place + 0.5) * 2 * extent) / size - extent;
  const segments = contourSegments(outputs, size, level);
  const picture = segments.map((place, index) =>
    index % 2 === 0 ? x.at(toDeflection(place)) : y.at(-toDeflection(place)),
  );
  return polyline(level === LINES[0] ? 'zone' : 'grid', null, picture);
}

function axes(extent: number, x: LinearScale, y: LinearScale, letter: number): Mark[] {
  const [left, right] = x.range;
  const [top, bottom] = y.range;
  return [
    line('axis', null, left, y.at(0), right, y.at(0)),
    line('axis', null, x.at(0), top, x.at(0), bottom),
    ...[-1, 0, 1].flatMap((at) =>
      Math.abs(at) > extent
        ? []
        : [
            text('label', null, x.at(at), bottom + letter * 1.3, String(at).replace('-', '−')),
            text('label', null, left - letter * 0.4, y.at(at) + letter * 0.35, String(at).replace('-', '−'), 'end'),
          ],
    ),
  ];
}

function placed(points: readonly number[], x: LinearScale, y: LinearScale): number[] {
  return points.map((value, index) => (index % 2 === 0 ? x.at(value) : y.at(value)));
}

function points(values: readonly number[]): [number, number][] {
  return Array.from({ length: values.length / 2 }, (_, i) => [
    values[2 * i] ?? Number.NaN,
    values[2 * i + 1] ?? Number.NaN,
  ]);
}
