/** The signal path as a figure: output against push after each stage, the selected one and what it takes marked. */
import type { Figure, Mark, Room } from './figure.ts';
import { linearScale, type LinearScale } from './linear-scale.ts';
import { line, polyline, text } from './marks.ts';
import { spreadLabels } from './spread-labels.ts';
import type { StageCurves } from './stage-curves.ts';
import { decimalTicks } from './ticks.ts';

export interface StagesFigure extends Figure {
  readonly push: LinearScale;
  readonly output: LinearScale;
}

/**
 * `selected`: index of a stage, or null. Before the first stage the curve is dashed, the last is drawn strong; between a stage's
 * own curve and the one before it lies what it takes or gives, hatched upright. `names`: a short name for each curve.
 */
export function stagesFigure(
  { push, after }: StageCurves,
  names: readonly string[],
  selected: number | null,
  room: Room,
): StagesFigure {
  const { letter } = room;
  const right = letter * (2 + 0.55 * Math.max(0, ...names.map((name) => name.length)));
  const across = linearScale([0, 1], [letter * 2.6, Math.max(letter * 4, room.width - right)]);
  const most = Math.max(1, ...after.map((curve) => Math.max(...curve)));
  const up = linearScale([0, most * 1.04], [room.height - letter * 3, letter * 0.8]);
  const curves = after.map((curve, index): Mark => {
    const points = Array.from(curve).flatMap((value, step) => [across.at(push[step] ?? 0), up.at(value)]);
    if (index === 0) return polyline('reach', 'now', points);
    return index === after.length - 1 ? polyline('reach', 'proposed', points) : polyline('onset', null, points);
  });
  return {
    width: room.width,
    height: room.height,
    push: across,
    output: up,
    marks: [
      ...axes(across, up, letter),
      ...(selected === null ? [] : takenMarks(after, selected, push, across, up)),
      ...curves,
      ...labels(after, names, across, up, letter),
    ],
  };
}

function axes(across: LinearScale, up: LinearScale, letter: number): Mark[] {
  const [left, right] = across.range;
  const [bottom, top] = up.range;
  const ticks = decimalTicks(0, up.domain[1], Math.max(2, Math.floor((bottom - top) / (3 * letter))));
  return [
    ...ticks.values.flatMap((tick) => [
      line('grid', null, left, up.at(tick), right, up.at(tick)),
      text('label', null, left - letter * 0.4, up.at(tick) + letter * 0.35, tick.toFixed(ticks.decimals), 'end'),
    ]),
    ...[0, 0.25, 0.5, 0.75, 1].flatMap((share) => [
      line('grid', null, across.at(share), bottom, across.at(share), top),
      text(
        'label',
        null,
        across.at(share),
        bottom + letter * 1.3,
        share === 0 ? 'rest' : share === 1 ? 'gate' : `${100 * share} %`,
      ),
    ]),
    line('axis', null, left, bottom, right, bottom),
    line('axis', null, left, bottom, left, top),
    text('title', null, (left + right) / 2, bottom + letter * 2.6, 'push'),
  ];
}

/** Upright strokes between the curve before a stage and its own. */
function takenMarks(
  after: readonly Float64Array[],
  selected: number,
  push: Float64Array,
  across: LinearScale,
  up: LinearScale,
): Mark[] {
  const [before, own] = [after[selected], after[selected + 1]];
  if (before === undefined || own === undefined) return [];
  const points: number[] = [];
  for (let step = 0; step < push.length; step += 4) {
    const x = across.at(push[step] ?? 0);
    points.push(x, up.at(before[step] ?? 0), x, up.at(own[step] ?? 0), Number.NaN, Number.NaN);
  }
  return [
    polyline('evidence', null, points),
    polyline(
      'evidence',
      null,
      Array.from(own).flatMap((value, step) => [across.at(push[step] ?? 0), up.at(value)]),
    ),
  ];
}

function labels(
  after: readonly Float64Array[],
  names: readonly string[],
  across: LinearScale,
  up: LinearScale,
  letter: number,
): Mark[] {
  const ends = after.map((curve) => up.at(curve.at(-1) ?? 0));
  const places = spreadLabels(
    ends.map((at) => ({ at, size: letter * 1.15 })),
    up.range[1] - letter * 0.6,
    up.range[0] + letter * 0.6,
  );
  return names.slice(0, after.length).flatMap((name, index) => {
    const [end = 0, place = 0] = [ends[index], places[index]];
    const x = across.range[1];
    return [
      line('axis', null, x + letter * 0.1, end, x + letter * 0.6, place),
      text('label', null, x + letter * 0.8, place + letter * 0.35, name, 'start'),
    ];
  });
}
