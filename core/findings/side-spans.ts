/** How far each side of each axis reaches, against the others. */
import type { Outline } from './outline/fit-outline.ts';
import type { Unknown } from './outline/outline-model.ts';
import type { Subject } from './subject.ts';

export interface SideSpan {
  readonly axis: 'x' | 'y';
  readonly side: 1 | -1;
  /** Degrees counter-clockwise from +x. */
  readonly angle: number;
  /** Counts from the rest to where the gate would stop the stick in its middle. */
  readonly counts: number;
  /** Share by which it falls short of the median of the other three; negative where it goes further. */
  readonly short: number;
  readonly u95: number;
}

type SpanName = Extract<Unknown, 'xPlus' | 'xMinus' | 'yPlus' | 'yMinus'>;

const SIDES: readonly {
  readonly name: SpanName;
  readonly axis: 'x' | 'y';
  readonly side: 1 | -1;
  readonly angle: number;
}[] = [
  { name: 'xPlus', axis: 'x', side: 1, angle: 0 },
  { name: 'yPlus', axis: 'y', side: 1, angle: 90 },
  { name: 'xMinus', axis: 'x', side: -1, angle: 180 },
  { name: 'yMinus', axis: 'y', side: -1, angle: 270 },
];
const COVERAGE = 2;
/** Half width of what a threefold wave of the gate can pretend: common practice of moulded shells. */
const SHAPE = 0.005;

/** Null without an outline about a rest. */
export function sideSpans({ outline, aboutRest }: Subject): SideSpan[] | null {
  if (outline === null || !aboutRest) return null;
  return SIDES.map(({ name, axis, side, angle }) => {
    const counts = outline.value[name];
    const usual = middleOther(outline, name);
    const short = 1 - counts / usual.counts;
    const fit = outline.variance({ [name]: 1 / usual.counts, [usual.name]: -counts / usual.counts ** 2 });
    return { axis, side, angle, counts, short, u95: Math.hypot(COVERAGE * Math.sqrt(fit), SHAPE) };
  });
}

/** The middle one of the other three sides. */
function middleOther({ value }: Outline, name: SpanName): { readonly name: SpanName; readonly counts: number } {
  const others = SIDES.filter((one) => one.name !== name).map((one) => ({ name: one.name, counts: value[one.name] }));
  const [, middle] = others.toSorted((a, b) => a.counts - b.counts);
  return middle ?? { name, counts: value[name] };
}
