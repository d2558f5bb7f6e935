/** The Allan deviation of a resting stick against averaging time, both axes logarithmic. */
import type { Figure, Mark, Room, Tone } from './figure.ts';
import { linearScale, type LinearScale } from './linear-scale.ts';
import { line, polyline, text } from './marks.ts';

/** Averaging time in seconds and deviation in counts in turn. */
export interface AllanLine {
  readonly tone: Tone;
  readonly points: ArrayLike<number>;
}

/** A decade has lines at each whole multiple; the powers of ten are named. Points that are not above 0 have no place and leave a gap. */
export function allanFigure(series: readonly AllanLine[], room: Room): Figure {
  const { letter } = room;
  const [left, top] = [letter * 4.2, letter * 0.8];
  const across = logarithmic(values(series, 0), [left, Math.max(left + 1, room.width - letter * 1.6)]);
  const up = logarithmic(values(series, 1), [Math.max(top + 1, room.height - letter * 3), top]);
  const [bottom, right] = [up.range[0], across.range[1]];
  const marks: Mark[] = [
    ...decadeLines(across).map((x) => line('grid', null, x, bottom, x, top)),
    ...decadeLines(up).map((y) => line('grid', null, left, y, right, y)),
    ...decades(across).map((power) =>
      text('label', null, across.at(power), bottom + letter * 1.3, String(10 ** power)),
    ),
    ...decades(up).map((power) =>
      text('label', null, left - letter * 0.5, up.at(power) + letter * 0.35, String(10 ** power), 'end'),
    ),
    { kind: 'rect', role: 'frame', tone: null, x: left, y: top, width: right - left, height: bottom - top },
    text('title', null, (left + right) / 2, room.height - letter * 0.4, 'averaged over, s'),
    text('title', null, left + letter * 0.5, top + letter * 1.3, 'counts', 'start'),
    ...series.map(({ tone, points }) =>
      polyline(
        'reach',
        tone,
        Array.from(points, (value, index) =>
          value > 0 ? (index % 2 === 0 ? across : up).at(Math.log10(value)) : Number.NaN,
        ),
      ),
    ),
  ];
  return { width: room.width, height: room.height, marks };
}

function values(series: readonly AllanLine[], from: 0 | 1): number[] {
  return series.flatMap(({ points }) => Array.from(points).filter((value, index) => index % 2 === from && value > 0));
}

/** A scale of powers of ten, whole decades wide, so that at least two are named. */
function logarithmic(of: readonly number[], range: readonly [number, number]): LinearScale {
  if (of.length === 0) return linearScale([0, 1], range);
  const powers = of.map((value) => Math.log10(value));
  const low = Math.floor(Math.min(...powers) + 1e-9);
  const high = Math.ceil(Math.max(...powers) - 1e-9);
  return linearScale([low, Math.max(low + 1, high)], range);
}

function decades({ domain: [low, high] }: LinearScale): number[] {
  return Array.from({ length: high - low + 1 }, (_, step) => low + step);
}

function decadeLines(scale: LinearScale): number[] {
  return decades(scale).flatMap((power, index) => {
    if (index === 0) return [];
    return Array.from({ length: 9 }, (_, digit) => scale.at(power - 1 + Math.log10(digit + 2)));
  });
}
