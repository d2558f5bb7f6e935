/** The rest cloud of a plane, magnified beside it. */
import type { Pair } from '../pad/stick.ts';
import { clipPolyline, type Frame } from './clip-polyline.ts';
import type { Mark } from './figure.ts';
import { linearScale, type LinearScale } from './linear-scale.ts';
import { dot, line, polyline, text } from './marks.ts';
import type { PlaneInput } from './plane-input.ts';

/** Least size of the cloud in letters at which its shape can still be seen beside the zone's edge. */
const LEAST_CLOUD = 0.5;
/** Share of a cross's arm that stays open. */
const HOLE = 0.35;

const TIMES = [8, 6, 5, 4, 3, 2, 1];
const BARS = [5, 2, 1];

export interface RestInset {
  readonly box: Frame;
  readonly x: LinearScale;
  readonly y: LinearScale;
  readonly marks: readonly Mark[];
}

/**
 * The rest points about their mean, so many times the plane's own scale, with each mapping's centre and zone edge and a
 * bar of round counts. The zone's edge decides the magnification unless the cloud would shrink to a speck in it; then
 * the cloud does, and the edge lies outside. Null without a rest.
 */
export function restInset(
  input: PlaneInput,
  scales: { readonly x: LinearScale; readonly y: LinearScale },
  box: Frame,
  letter: number,
): RestInset | null {
  const middle = meanPoint(input.rests);
  if (middle === null) return null;
  const perCount = Math.abs(scales.x.at(1) - scales.x.at(0));
  const cloud = Math.max(1, ...input.rests.map((rest) => distance(rest, middle)));
  const centres = Math.max(...input.series.map((series) => distance(series.centre, middle)), cloud);
  const edges = Math.max(...input.series.map((series) => farthest(series.zone, middle)), centres);
  const room = (Math.min(box.width, box.height) / 2) * 0.94;
  const withEdges = roundDown(room / (edges * perCount), TIMES);
  const seen = cloud * perCount * withEdges >= letter * LEAST_CLOUD;
  const times = seen ? withEdges : roundDown(room / (centres * perCount), TIMES);
  const x = magnified(scales.x, middle.x, times, box.x + box.width / 2);
  const y = magnified(scales.y, middle.y, times, box.y + box.height / 2);
  const inside = (points: readonly number[]): number[] =>
    clipPolyline(
      points.map((value, index) => (index % 2 === 0 ? x.at(value) : y.at(value))),
      box,
    );
  const bar = roundDown((box.width * 0.8) / (perCount * times), BARS);
  const barLength = bar * perCount * times;
  const barY = box.y - letter * 0.9;
  const marks: Mark[] = [
    { kind: 'rect', role: 'frame', tone: null, ...box },
    ...input.series.flatMap(({ tone, zone, centre }) => [
      ...(zone === null ? [] : [polyline('zone', tone, inside(zone))]),
      polyline('centre', tone, inside(cross(centre, (letter * 0.65) / (perCount * times)))),
    ]),
    ...beforeRests(input, { x, y }, box, letter),
    ...input.rests.map((rest) => dot('rest', null, x.at(rest.x), y.at(rest.y), letter * 0.14)),
    text('title', null, box.x, barY - letter * 2.3, `rest ×${times}`, 'start'),
    text('label', null, box.x, barY - letter * 0.7, `${bar} ${bar === 1 ? 'count' : 'counts'}`, 'start'),
    line('scaleBar', null, box.x, barY, box.x + barLength, barY),
  ];
  return { box, x, y, marks };
}

/** A scale so many times as large, with a value in the middle of the box. */
function magnified(scale: LinearScale, middle: number, times: number, at: number): LinearScale {
  const perCount = (scale.at(1) - scale.at(0)) * times;
  return linearScale([middle, middle + 1], [at, at + perCount]);
}

/** Rest points of the survey that is compared with, where they lie inside the box: small crosses. */
function beforeRests(
  { before }: PlaneInput,
  at: { readonly x: LinearScale; readonly y: LinearScale },
  box: Frame,
  letter: number,
): Mark[] {
  const arm = letter * 0.2;
  return (before?.rests ?? []).flatMap((rest) => {
    const [x, y] = [at.x.at(rest.x), at.y.at(rest.y)];
    const inside = x > box.x + arm && x < box.x + box.width - arm && y > box.y + arm && y < box.y + box.height - arm;
    const points = [x - arm, y - arm, x + arm, y + arm, Number.NaN, Number.NaN, x - arm, y + arm, x + arm, y - arm];
    return inside ? [polyline('rest', 'before', points)] : [];
  });
}

function meanPoint(points: readonly Pair[]): Pair | null {
  if (points.length === 0) return null;
  const sum = points.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

function distance(a: Pair, b: Pair): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function farthest(points: readonly number[] | null, from: Pair): number {
  let most = 0;
  for (let at = 0; at + 1 < (points?.length ?? 0); at += 2)
    most = Math.max(most, Math.hypot((points?.[at] ?? 0) - from.x, (points?.[at + 1] ?? 0) - from.y));
  return most;
}

/** A cross in counts, open in its middle so that it never hides a rest point; x and y in turn. */
function cross(at: Pair, arm: number): number[] {
  const strokes: readonly (readonly [number, number])[] = [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ];
  return strokes.flatMap(([x, y]) => [
    ...[at.x + x * arm, at.y + y * arm, at.x + x * arm * HOLE, at.y + y * arm * HOLE],
    ...[Number.NaN, Number.NaN],
  ]);
}

/** The largest number of one leading digit out of `digits` that is not more than the value; 1 at least. */
function roundDown(value: number, digits: readonly number[]): number {
  const power = 10 ** Math.max(0, Math.floor(Math.log10(value)));
  return digits.map((digit) => digit * power).find((step) => step <= value) ?? 1;
}
