/** A judged value on a rule: the limit, the guard band to both sides of it, and the value with its expanded uncertainty. */
import type { Figure, Mark, Room } from './figure.ts';
import { linearScale, type LinearScale } from './linear-scale.ts';
import { dot, hatch, line, text } from './marks.ts';
import { spreadLabels, textWidth } from './spread-labels.ts';
import { decimalTicks } from './ticks.ts';

export interface GuardBandInput {
  readonly value: number | null;
  /** Expanded uncertainty of the value; null where it cannot be stated. */
  readonly u95: number | null;
  readonly limit: number;
  /** A number of the unit as the figure writes it. */
  readonly write: (value: number) => string;
  /** Decimals that ticks are written with. */
  readonly tick: (value: number, decimals: number) => string;
}

export interface GuardBandFigure extends Figure {
  readonly scale: LinearScale;
  /** Height of the rule. */
  readonly at: number;
}

const ABOVE = 2.1;
/** Share of the rule beyond the outermost thing drawn on it. */
const AIR = 0.12;

/** limit ± U, where U is the value's expanded uncertainty, and never below 0: no magnitude is. Null without an uncertainty. */
export function guardBand(limit: number, u95: number | null): readonly [number, number] | null {
  return u95 === null || u95 === 0 ? null : [Math.max(0, limit - u95), limit + u95];
}

/**
 * The guard band is limit ± U (JCGM 106, 8.3.2): with the value outside of it on the side that holds it passes, on the
 * other it fails, inside nothing can be said. Without an uncertainty there is no band. The scale begins at 0.
 */
export function guardBandFigure(input: GuardBandInput, room: Room): GuardBandFigure {
  const { value, u95, limit } = input;
  const { letter } = room;
  const at = letter * ABOVE;
  const half = u95 ?? 0;
  const band = guardBand(limit, u95);
  const outermost = [0, limit, ...(band ?? []), ...(value === null ? [] : [lowEnd(value, half), value + half])];
  const low = Math.min(...outermost);
  const high = Math.max(...outermost, limit === 0 ? 1e-9 : limit);
  const air = (high - low) * AIR;
  const scale = linearScale([low < 0 ? low - air : 0, high + air], [letter * 0.5, room.width - letter * 0.5]);
  const most = Math.max(2, Math.floor((scale.range[1] - scale.range[0]) / (letter * 6)));
  const ticks = decimalTicks(...scale.domain, most);
  return {
    width: room.width,
    height: room.height,
    scale,
    at,
    marks: [
      line('axis', null, scale.range[0], at, scale.range[1], at),
      ...ticks.values.flatMap((tick) => [
        line('axis', null, scale.at(tick), at, scale.at(tick), at + letter * 0.4),
        text('label', null, scale.at(tick), at + letter * 1.5, input.tick(tick, ticks.decimals), anchorOf(tick, scale)),
      ]),
      ...(band === null ? [] : [hatch('guard', boxOf(band, scale, at, letter), letter * 0.45)]),
      line('full', null, scale.at(limit), at - letter * 0.9, scale.at(limit), at + letter * 0.9),
      ...valueMarks(input, scale, at, letter),
      ...labels(input, scale, at, letter),
    ],
  };
}

/** Lower end of a value ± U: that of a magnitude is not below 0. */
function lowEnd(value: number, u95: number): number {
  return value < 0 ? value - u95 : Math.max(0, value - u95);
}

function valueMarks({ value, u95 }: GuardBandInput, scale: LinearScale, at: number, letter: number): Mark[] {
  if (value === null) return [];
  const x = scale.at(value);
  const foot = letter * 0.35;
  const whisker =
    u95 === null
      ? []
      : [lowEnd(value, u95), value + u95].map((end) =>
          line('judged', null, scale.at(end), at - foot, scale.at(end), at + foot),
        );
  return [
    ...(u95 === null ? [] : [line('judged', null, scale.at(lowEnd(value, u95)), at, scale.at(value + u95), at)]),
    ...whisker,
    dot('judged', null, x, at, letter * 0.32),
  ];
}

/** Both numbers above the rule, moved aside where they would lie on each other. */
function labels({ value, limit, write }: GuardBandInput, scale: LinearScale, at: number, letter: number): Mark[] {
  const wanted = [
    { role: 'label', at: limit, words: `limit ${write(limit)}` } as const,
    ...(value === null ? [] : [{ role: 'value', at: value, words: write(value) } as const]),
  ];
  const places = spreadLabels(
    wanted.map((one) => ({ at: scale.at(one.at), size: textWidth(one.words, letter) })),
    0,
    scale.range[1] + letter * 0.5,
    letter * 0.8,
  );
  return wanted.map((one, index) =>
    text(one.role, null, places[index] ?? scale.at(one.at), at - letter * 1.15, one.words),
  );
}

function boxOf(
  band: readonly [number, number],
  scale: LinearScale,
  at: number,
  letter: number,
): { x: number; y: number; width: number; height: number } {
  const x = scale.at(band[0]);
  return { x, y: at - letter * 0.55, width: scale.at(band[1]) - x, height: letter * 1.1 };
}

/** The words of a tick at either end stay within the picture. */
function anchorOf(tick: number, scale: LinearScale): 'start' | 'middle' | 'end' {
  const share = (tick - scale.domain[0]) / (scale.domain[1] - scale.domain[0]);
  return share < 0.04 ? 'start' : share > 0.96 ? 'end' : 'middle';
}
