/** The stick's plane in raw counts: gate, rest and what each mapping makes full output and zone of, drawn back into counts. */
import type { Pair, StickFields } from '../pad/stick.ts';
import { clipPolyline, type Frame } from './clip-polyline.ts';
import type { Figure, Mark, Room } from './figure.ts';
import { linearScale, type LinearScale } from './linear-scale.ts';
import { dot, line, polyline, text } from './marks.ts';
import type { PlaneInput } from './plane-input.ts';
import { restInset, type RestInset } from './rest-inset.ts';
import { decimalTicks } from './ticks.ts';

export interface PlaneFigure extends Figure {
  readonly x: LinearScale;
  readonly y: LinearScale;
  readonly frame: Frame;
  readonly about: Pair;
  readonly fields: StickFields;
  /** The magnified rest; null without one. */
  readonly inset: RestInset | null;
}

/** Equal counts take equal lengths on both axes; right is right and up is up, whichever way the counts grow. */
export function planeFigure(input: PlaneInput, room: Room): PlaneFigure {
  const { letter } = room;
  const left = letter * 3.8;
  const top = letter * 0.8;
  const insetWidth = Math.max(letter * 6, room.width * 0.27);
  const side = Math.max(
    letter * 4,
    Math.min(room.width - left - insetWidth - letter * 1.4, room.height - top - letter * 1.9),
  );
  const frame = { x: left, y: top, width: side, height: side };
  const span = squareSpan(input);
  const x = linearScale(turned(span.x, input.fields.x.up), [left, left + side]);
  const y = linearScale(turned(span.y, input.fields.y.up), [top + side, top]);
  const place = (points: readonly number[]): number[] =>
    points.map((value, index) => (index % 2 === 0 ? x.at(value) : y.at(value)));
  const most = Math.max(2, Math.floor(side / (letter * 4)));
  const box = {
    x: left + side + letter * 1.2,
    y: top + side - Math.min(side * 0.62, insetWidth * 1.4),
    width: insetWidth,
    height: Math.min(side * 0.62, insetWidth * 1.4),
  };
  const inset = restInset(input, { x, y }, box, letter);
  const marks: Mark[] = [
    ...decimalTicks(...span.x, most).values.flatMap((value) => [
      line('grid', null, x.at(value), top, x.at(value), top + side),
      text('label', null, x.at(value), top + side + letter * 1.4, String(value)),
    ]),
    ...decimalTicks(...span.y, most).values.flatMap((value) => [
      line('grid', null, left, y.at(value), left + side, y.at(value)),
      text('label', null, left - letter * 0.5, y.at(value) + letter * 0.35, String(value), 'end'),
    ]),
    ...limitLines(input.fields, x, y, frame),
    { kind: 'rect', role: 'frame', tone: null, ...frame },
    ...(input.before?.trace == null
      ? []
      : [polyline('gate', 'before', clipPolyline(place(input.before.trace), frame))]),
    ...(input.trace === null ? [] : [polyline('gate', null, place(input.trace))]),
    ...input.series.flatMap(({ tone, unit, zone }) => [
      polyline('unit', tone, clipPolyline(place(unit), frame)),
      ...(zone === null ? [] : [polyline('zone', tone, clipPolyline(place(zone), frame))]),
    ]),
    ...(input.before?.rests ?? []).map((rest) => dot('rest', 'before', x.at(rest.x), y.at(rest.y), letter * 0.1)),
    ...input.rests.map((rest) => dot('rest', null, x.at(rest.x), y.at(rest.y), letter * 0.1)),
    text('title', null, left + letter * 0.5, top + letter * 1.3, '↑ up', 'start'),
    text('title', null, left + side - letter * 0.5, top + side - letter * 0.6, 'right →', 'end'),
    ...(inset?.marks ?? []),
  ];
  return {
    width: room.width,
    height: room.height,
    marks,
    x,
    y,
    frame,
    about: input.about,
    fields: input.fields,
    inset,
  };
}

/** Angle of a picture point about the rest, degrees counter-clockwise from right in [0, 360). */
export function planeAngle(figure: PlaneFigure, px: number, py: number): number {
  const right = px - figure.x.at(figure.about.x);
  const up = figure.y.at(figure.about.y) - py;
  const degrees = (Math.atan2(up, right) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

/** The selected direction over a plane: a ray to its rim point, or, where there is none, to the edge of the picture. */
export function planeRay(figure: PlaneFigure, angle: number, rim: Pair | null, letter: number): Mark[] {
  const fromX = figure.x.at(figure.about.x);
  const fromY = figure.y.at(figure.about.y);
  if (rim !== null) {
    const toX = figure.x.at(figure.about.x + figure.fields.x.up * rim.x);
    const toY = figure.y.at(figure.about.y + figure.fields.y.up * rim.y);
    return [line('direction', null, fromX, fromY, toX, toY), dot('direction', null, toX, toY, letter * 0.27)];
  }
  const turn = (angle * Math.PI) / 180;
  const far = figure.frame.width * 2;
  const ray = [fromX, fromY, fromX + far * Math.cos(turn), fromY - far * Math.sin(turn)];
  return [polyline('direction', null, clipPolyline(ray, figure.frame))];
}

function turned(span: readonly [number, number], up: 1 | -1): [number, number] {
  return up === 1 ? [span[0], span[1]] : [span[1], span[0]];
}

/** A square of counts that holds everything drawn, with a little air. */
function squareSpan(input: PlaneInput): { x: [number, number]; y: [number, number] } {
  const bounds = { xLow: Infinity, xHigh: -Infinity, yLow: Infinity, yHigh: -Infinity };
  const take = (x: number, y: number): void => {
    bounds.xLow = Math.min(bounds.xLow, x);
    bounds.xHigh = Math.max(bounds.xHigh, x);
    bounds.yLow = Math.min(bounds.yLow, y);
    bounds.yHigh = Math.max(bounds.yHigh, y);
  };
  for (const points of [
    input.trace ?? [],
    input.before?.trace ?? [],
    ...[...input.series, ...(input.beside ?? [])].map(({ unit }) => unit),
  ])
    for (let at = 0; at + 1 < points.length; at += 2) take(points[at] ?? 0, points[at + 1] ?? 0);
  for (const rest of [...input.rests, input.about]) take(rest.x, rest.y);
  const half = Math.max(1, (bounds.xHigh - bounds.xLow) / 2, (bounds.yHigh - bounds.yLow) / 2) * 1.08;
  const middleX = (bounds.xLow + bounds.xHigh) / 2;
  const middleY = (bounds.yLow + bounds.yHigh) / 2;
  return { x: [middleX - half, middleX + half], y: [middleY - half, middleY + half] };
}

/** The limits of the fields, where they fall inside the picture: beyond them nothing can be reported. */
function limitLines(fields: StickFields, x: LinearScale, y: LinearScale, frame: Frame): Mark[] {
  const right = frame.x + frame.width;
  const bottom = frame.y + frame.height;
  return [
    ...[fields.x.minimum, fields.x.maximum].map((limit) => [x.at(limit), frame.y, x.at(limit), bottom]),
    ...[fields.y.minimum, fields.y.maximum].map((limit) => [frame.x, y.at(limit), right, y.at(limit)]),
  ].flatMap((ends) => {
    const inside = clipPolyline(ends, frame);
    return inside.length === 0 ? [] : [polyline('limit', null, inside)];
  });
}
