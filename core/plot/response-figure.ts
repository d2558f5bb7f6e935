/** What comes out against push, under each mapping: both from 0 to 1. */
import type { Figure, Mark, Room, Tone } from './figure.ts';
import { linearScale, type LinearScale } from './linear-scale.ts';
import { line, polyline, text } from './marks.ts';

/** Push and output in turn, each a share. */
export interface ResponseLine {
  readonly tone: Tone;
  readonly points: ArrayLike<number>;
}

export interface ResponseFigure extends Figure {
  readonly push: LinearScale;
  readonly output: LinearScale;
}

const TICKS = [0, 0.25, 0.5, 0.75, 1] as const;

/** `across` says which way the push goes, e.g. `push toward 55° up-right`. The later series lie over the earlier ones. */
export function responseFigure(series: readonly ResponseLine[], across: string, room: Room): ResponseFigure {
  const { letter } = room;
  const [left, top] = [letter * 3.6, letter * 0.8];
  const push = linearScale([0, 1], [left, Math.max(left + 1, room.width - letter * 1.4)]);
  const output = linearScale([0, 1], [Math.max(top + 1, room.height - letter * 3), top]);
  const [bottom, right] = [output.range[0], push.range[1]];
  const named = TICKS.filter((tick) => tick !== 0.25 && tick !== 0.75);
  const marks: Mark[] = [
    ...TICKS.flatMap((tick) => [
      line('grid', null, left, output.at(tick), right, output.at(tick)),
      line('grid', null, push.at(tick), bottom, push.at(tick), top),
    ]),
    ...named.flatMap((tick) => [
      text('label', null, left - letter * 0.5, output.at(tick) + letter * 0.35, String(tick), 'end'),
      text('label', null, push.at(tick), bottom + letter * 1.3, pushWord(tick)),
    ]),
    line('axis', null, left, bottom, right, bottom),
    line('axis', null, left, bottom, left, top),
    text('title', null, (left + right) / 2, room.height - letter * 0.4, across),
    text('title', null, left + letter * 0.5, top + letter * 1.1, 'output', 'start'),
    ...series.map(({ tone, points }) =>
      polyline(
        'reach',
        tone,
        Array.from(points, (value, index) => (index % 2 === 0 ? push.at(value) : output.at(value))),
      ),
    ),
  ];
  return { width: room.width, height: room.height, marks, push, output };
}

function pushWord(share: number): string {
  return share === 0 ? 'rest' : share === 1 ? 'gate' : 'half way';
}
