/** The unrolled profile: reach at the gate and onset from the measured rest, drawn over direction. */
import { directionStep } from '../geometry/directions.ts';
import type { Coverage } from '../measure/rim-measure.ts';
import { coverageMarks } from './coverage-marks.ts';
import type { Figure, Mark, Room, Tone } from './figure.ts';
import { linearScale, type LinearScale } from './linear-scale.ts';
import { dot, line, polyline, text } from './marks.ts';
import { percent } from './number-text.ts';
import { textWidth } from './spread-labels.ts';
import { decimalTicks, type Ticks } from './ticks.ts';

/** What one mapping does in each direction; null where it cannot be stated. */
export interface ProfileSeries {
  readonly tone: Tone;
  /** Magnitude of the free deflection at the gate. */
  readonly reach: readonly (number | null)[];
  /** Sample σ of the reach over turns. */
  readonly spread: readonly (number | null)[];
  /** Deflection from rest until the zone gives output; null where it gives none before the gate, or without a rest. */
  readonly onset: readonly (number | null)[] | null;
}

export interface ProfileInput {
  readonly series: readonly ProfileSeries[];
  readonly states: readonly Coverage[];
  /** Directions whose rim point stands at a limit of its field where that hides more: the reach is "at least". */
  readonly atLeast: readonly boolean[];
}

export interface ProfileFigure extends Figure {
  /** Degrees along the picture. */
  readonly direction: LinearScale;
  readonly reach: LinearScale;
  readonly onset: LinearScale;
  readonly top: number;
  readonly bottom: number;
  /** Middles and widths of the words along the axis. */
  readonly words: readonly { readonly at: number; readonly width: number }[];
}

const CORNERS: readonly (readonly [number, string])[] = [
  [0, '0° right'],
  [45, '45°'],
  [90, '90° up'],
  [135, '135°'],
  [180, '180° left'],
  [225, '225°'],
  [270, '270° down'],
  [315, '315°'],
  [360, '360° right'],
];

/** Everything but the selected direction, which `profileRule` draws over it. */
export function profileFigure(input: ProfileInput, room: Room): ProfileFigure {
  const { letter } = room;
  const left = Math.ceil(letter * 4.2);
  const right = Math.max(left + 1, room.width - letter * 3.2);
  const top = letter * 1.9;
  const bottom = Math.max(top + 1, room.height - letter * 2.2);
  const split = top + (bottom - top) * 0.6;
  const direction = linearScale([0, 360], [left, right]);
  const reachTicks = decimalTicks(...reachSpan(input.series), ticksThatFit(split - top, letter));
  const reach = linearScale(tickSpan(reachTicks, reachSpan(input.series)), [split - letter * 1.2, top]);
  const onsetTicks = decimalTicks(0, onsetTop(input.series), ticksThatFit(bottom - split, letter));
  const onset = linearScale([0, onsetTop(input.series)], [bottom, split + letter * 2.2]);

  const words = CORNERS.map(([angle, name]) => ({ at: direction.at(angle), width: textWidth(name, letter) }));
  const marks: Mark[] = [
    ...CORNERS.map(([angle]) => line('grid', null, direction.at(angle), top, direction.at(angle), bottom)),
    ...CORNERS.map(([angle, words]) => text('label', null, direction.at(angle), room.height - letter * 0.6, words)),
    ...reachTicks.values.map((value) => line('grid', null, left, reach.at(value), right, reach.at(value))),
    ...reachTicks.values.map((value) =>
      text(
        'label',
        null,
        left - letter * 0.6,
        reach.at(value) + letter * 0.35,
        value.toFixed(Math.max(2, reachTicks.decimals)),
        'end',
      ),
    ),
    ...onsetTicks.values.map((value) => line('grid', null, left, onset.at(value), right, onset.at(value))),
    ...onsetTicks.values.map((value) =>
      text(
        'label',
        null,
        left - letter * 0.6,
        onset.at(value) + letter * 0.35,
        percent(value, Math.max(0, onsetTicks.decimals - 2)),
        'end',
      ),
    ),
    ...coverageMarks(input.states, direction, top, bottom, letter),
    line('full', null, left, reach.at(1), right, reach.at(1)),
    line('axis', null, left, onset.at(0), right, onset.at(0)),
    text('title', null, left, letter * 1.1, 'reach (1 = full output)', 'start'),
    text('title', null, left, onset.range[1] - letter * 0.9, 'onset, share of full tilt', 'start'),
    ...input.series.flatMap((series) => seriesMarks(series, input, direction, reach, onset, letter)),
  ];
  return { width: room.width, height: room.height, marks, direction, reach, onset, top, bottom, words };
}

function seriesMarks(
  series: ProfileSeries,
  input: ProfileInput,
  direction: LinearScale,
  reach: LinearScale,
  onset: LinearScale,
  letter: number,
): Mark[] {
  const { tone } = series;
  const atLeast = input.atLeast.flatMap((censored, index) => {
    const value = series.reach[index];
    return censored && value !== null && value !== undefined
      ? [text('atLeast', tone, direction.at(index * directionStep), reach.at(value) - letter * 0.3, '≥')]
      : [];
  });
  const onsets = series.onset ?? [];
  const never = onsets.flatMap((value, index) =>
    value === null && input.states[index] !== 'none' && series.reach[index] !== null
      ? [text('never', tone, direction.at(index * directionStep), onset.range[1] + letter * 0.35, '×')]
      : [],
  );
  return [
    spreadBand(series, direction, reach),
    polyline('reach', tone, unrolled(series.reach, direction, reach)),
    polyline('onset', tone, unrolled(onsets, direction, onset)),
    ...(tone === 'yours' ? ownDots(series.reach, direction, reach, letter) : []),
    ...atLeast,
    ...never,
  ];
}

/** A dot every 15° tells yours from the line it was copied from. */
function ownDots(
  values: readonly (number | null)[],
  direction: LinearScale,
  reach: LinearScale,
  letter: number,
): Mark[] {
  return values.flatMap((value, index) =>
    value === null || index % 3 !== 0
      ? []
      : [dot('reach', 'yours', direction.at(index * directionStep), reach.at(value), letter * 0.25)],
  );
}

/** x and y in turn from 0° to 360°, where the first direction is drawn again. */
function unrolled(values: readonly (number | null)[], direction: LinearScale, scale: LinearScale): number[] {
  const points: number[] = [];
  for (let index = 0; index <= values.length; index += 1) {
    const value = values[index % values.length] ?? null;
    points.push(direction.at(index * directionStep), value === null ? Number.NaN : scale.at(value));
  }
  return points;
}

/** One σ over turns to both sides of the reach, a closed band for each unbroken run. */
function spreadBand(series: ProfileSeries, direction: LinearScale, reach: LinearScale): Mark {
  const parts: string[] = [];
  let upper: number[] = [];
  let lower: number[] = [];
  const count = series.reach.length;
  for (let index = 0; index <= count + 1; index += 1) {
    const value = index > count ? null : (series.reach[index % count] ?? null);
    const spread = index > count ? null : (series.spread[index % count] ?? null);
    if (value === null || spread === null) {
      if (upper.length > 2) {
        const mark = polyline('spread', series.tone, [...upper, ...lower], true);
        if (mark.kind === 'path') parts.push(mark.d);
      }
      upper = [];
      lower = [];
      continue;
    }
    const x = direction.at(index * directionStep);
    upper.push(x, reach.at(value + spread));
    lower.unshift(x, reach.at(value - spread));
  }
  return { kind: 'path', role: 'spread', tone: series.tone, d: parts.join('') };
}

function reachSpan(series: readonly ProfileSeries[]): [number, number] {
  const values = series.flatMap((one) =>
    one.reach.flatMap((value, index) => {
      const spread = one.spread[index] ?? 0;
      return value === null ? [] : [value - spread, value + spread];
    }),
  );
  const low = Math.min(1, ...values);
  const high = Math.max(1, ...values);
  // A profile that is flat to a per mille must look flat: never magnify less than a tenth to the full height.
  const missing = Math.max(0, 0.1 - (high - low));
  const edge = (high - low) * 0.06;
  return [low - missing * 0.6 - edge, high + missing * 0.4 + edge];
}

function tickSpan(ticks: Ticks, span: readonly [number, number]): [number, number] {
  return [Math.min(span[0], ticks.values[0] ?? span[0]), Math.max(span[1], ticks.values.at(-1) ?? span[1])];
}

function onsetTop(series: readonly ProfileSeries[]): number {
  const values = series.flatMap((one) => one.onset?.filter((value) => value !== null) ?? []);
  return Math.max(0.04, ...values) * 1.1;
}

function ticksThatFit(length: number, letter: number): number {
  return Math.min(9, Math.max(2, Math.floor(length / (letter * 2))));
}
