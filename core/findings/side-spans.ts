/** How far each side of each axis reaches, against the others. */
import type { Unknown } from './outline/outline-model.ts';
import type { Subject } from './subject.ts';

export interface SideSpan {
  readonly axis: 'x' | 'y';
  readonly side: 1 | -1;
  /** Degrees counter-clockwise from +x. */
  readonly angle: number;
  /** Counts from the rest to where the gate would stop the stick in its middle. */
  readonly counts: number;
  /** Share by which it falls short of the other side of its axis; negative where it goes further. */
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
const OPPOSITE: Readonly<Record<SpanName, SpanName>> = {
  xPlus: 'xMinus',
  xMinus: 'xPlus',
  yPlus: 'yMinus',
  yMinus: 'yPlus',
};
const COVERAGE = 2;
/** Half width of what a threefold wave of the gate can pretend: common practice of moulded shells. */
const SHAPE = 0.005;

/** Null without an outline about a rest. */
export function sideSpans({ outline, aboutRest }: Subject): SideSpan[] | null {
  if (outline === null || !aboutRest) return null;
  return SIDES.map(({ name, axis, side, angle }) => {
    const counts = outline.value[name];
    const opposite = OPPOSITE[name];
    const whole = outline.value[opposite];
    const short = 1 - counts / whole;
    const fit = outline.variance({ [name]: 1 / whole, [opposite]: -counts / whole ** 2 });
    return { axis, side, angle, counts, short, u95: Math.hypot(COVERAGE * Math.sqrt(fit), SHAPE) };
  });
}
