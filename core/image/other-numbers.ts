/** Numbers that no stick was measured with, and that are as easy to find by chance as the measured ones. */
import type { AxisMapping, PadMapping, StickMapping } from '../mapping/mapping.ts';
import type { Random } from '../numeric/random.ts';
import { STICKS } from '../pad/stick.ts';

export interface OtherNumbers {
  readonly numbers: PadMapping;
  /** Counts by which every axis differs from the measured one in one of its numbers at least. */
  readonly away: number;
}

/** How far all centres move, and by what factor all spans below and above grow. */
interface Change {
  readonly shift: number;
  readonly below: number;
  readonly above: number;
}

/** Less than this share of the measured span away, they would be the measured ones. */
const LEAST_AWAY = 0.03;
/** The largest change moves a centre by half of the scale, and multiplies or divides a span by e; the smallest is this share of it. */
const LEAST_CHANGE = 0.02;
/** Numbers that fill their scale leave little room for others, so that most draws are none. */
const MOST_DRAWS = 20_000;

/**
 * All axes of both sticks are changed alike: sticks of a pad resemble each other, and what repeats in a memory would hit the measured
 * numbers and never such as do not. Half of the sets keep the likeness of spans below and above too. Small changes are as frequent as
 * large ones, by their logarithm. Fewer than `wanted` where the scale leaves no room.
 */
export function otherNumbers(measured: PadMapping, wanted: number, random: Random): OtherNumbers[] {
  const axes = axesOf(measured);
  const top = scaleOf(measured);
  const others: OtherNumbers[] = [];
  for (let draw = 0; draw < MOST_DRAWS && others.length < wanted; draw += 1) {
    const change = drawChange(top, others.length % 2 === 0, random);
    const changed = axes.map((axis) => changeAxis(axis, change));
    if (!changed.every(({ min, centre, max }) => min >= 0 && min < centre && centre < max && max <= top)) continue;
    const away = changed.map((axis, index) => awayFrom(axis, axes[index] ?? axis));
    if (!axes.every(({ min, max }, index) => (away[index] ?? 0) >= LEAST_AWAY * (max - min))) continue;
    const numbers = Object.fromEntries(
      Object.entries(measured).map(([stick, { x, y }]: [string, StickMapping]) => [
        stick,
        { x: changeAxis(x, change), y: changeAxis(y, change) },
      ]),
    );
    others.push({ numbers, away: Math.min(...away) });
  }
  return others;
}

/** The largest count of the scale that the numbers are of. */
export function scaleOf(measured: PadMapping): number {
  const most = Math.max(...axesOf(measured).map(({ max }) => max));
  return 2 ** Math.max(8, Math.ceil(Math.log2(most + 1))) - 1;
}

function axesOf(measured: PadMapping): AxisMapping[] {
  return STICKS.flatMap((stick) => {
    const mapping = measured[stick];
    return mapping === undefined ? [] : [mapping.x, mapping.y];
  });
}

function drawChange(top: number, isEven: boolean, random: Random): Change {
  const size = Math.exp(Math.log(LEAST_CHANGE) * random.next());
  const part = (): number => size * (2 * random.next() - 1);
  const shift = Math.round((part() * top) / 2);
  const below = Math.exp(part());
  return { shift, below, above: isEven ? below : Math.exp(part()) };
}

function changeAxis({ min, centre, max }: AxisMapping, { shift, below, above }: Change): AxisMapping {
  return {
    min: Math.round(centre + shift - below * (centre - min)),
    centre: centre + shift,
    max: Math.round(centre + shift + above * (max - centre)),
  };
}

function awayFrom(axis: AxisMapping, measured: AxisMapping): number {
  const numbers = ({ min, centre, max }: AxisMapping): number[] => [min, centre, max, centre - min, max - centre];
  const was = numbers(measured);
  return Math.max(...numbers(axis).map((number, index) => Math.abs(number - (was[index] ?? number))));
}
