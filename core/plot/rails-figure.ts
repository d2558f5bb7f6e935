/** The axis rails: each axis on its raw scale, with what was measured, what the mappings say, and deflection opposite. */
import type { MappingNumber } from '../mapping/mapping-number.ts';
import type { AxisMapping, StickMapping } from '../mapping/mapping.ts';
import type { AxisField, Pair, StickFields } from '../pad/stick.ts';
import type { Figure, Mark, Room, Tone } from './figure.ts';
import { linearScale, type LinearScale } from './linear-scale.ts';
import { line, pointer, text } from './marks.ts';
import { count, signed } from './number-text.ts';
import { spreadLabels, textWidth } from './spread-labels.ts';
import { countTicks } from './ticks.ts';

export interface RailsSeries {
  readonly tone: Tone;
  readonly mapping: StickMapping;
}

export interface RailsInput {
  readonly fields: StickFields;
  /** In the order they are drawn; the last one gives the deflection scale and the written numbers. */
  readonly series: readonly RailsSeries[];
  /** Least and greatest count met on each axis along the gate; null without a rim. */
  readonly extents: {
    readonly xMin: number;
    readonly xMax: number;
    readonly yMin: number;
    readonly yMax: number;
  } | null;
  readonly rests: readonly Pair[];
}

/** One number of the leading mapping: where its mark stands, and where it is written. */
export interface RailNumber {
  readonly of: MappingNumber;
  readonly tone: Tone;
  readonly value: number;
  readonly x: number;
  readonly labelX: number;
  /** Height of its rail. */
  readonly at: number;
}

export interface RailsFigure extends Figure {
  /** In the order x.min, x.centre, x.max, y.min … */
  readonly numbers: readonly RailNumber[];
  readonly x: LinearScale;
  readonly y: LinearScale;
  /** Heights of the two rails. */
  readonly xAt: number;
  readonly yAt: number;
}

/** Letters of height above a rail's line, and of both rails together. */
const ABOVE = 4.1;
const HIGH = 12.8;

const DEFLECTIONS = [-1, -0.5, 0, 0.5, 1];
const ENDS = { x: ['left', 'right'], y: ['down', 'up'] } as const;

/** `written`: whether the leading mapping's numbers are marks of the figure, or are left to who draws it. */
export function railsFigure(input: RailsInput, room: Room, written = true): RailsFigure {
  const { letter } = room;
  const left = letter * 5.6;
  const right = Math.max(left + 1, room.width - letter * 5);
  const free = Math.max(0, room.height - letter * HIGH);
  const xAt = letter * ABOVE + free * 0.25;
  const yAt = xAt + (letter * HIGH) / 2 + free * 0.5;
  const make = (axis: 'x' | 'y', at: number): { scale: LinearScale; marks: Mark[]; numbers: RailNumber[] } => {
    const field = input.fields[axis];
    const scale = linearScale([field.minimum, field.maximum], [left, right]);
    const extent =
      input.extents === null
        ? null
        : axis === 'x'
          ? ([input.extents.xMin, input.extents.xMax] as const)
          : ([input.extents.yMin, input.extents.yMax] as const);
    const series = input.series.map((one) => ({ tone: one.tone, mapping: one.mapping[axis] }));
    const rests = input.rests.map((rest) => rest[axis]);
    const numbers = railNumbers(axis, series.at(-1), scale, at, letter);
    const marks = [
      ...axisMarks(axis, field, scale, at, extent, rests, series, letter),
      ...(written ? numbers.map((one) => numberMark(one, letter)) : []),
    ];
    return { scale, marks, numbers };
  };
  const x = make('x', xAt);
  const y = make('y', yAt);
  return {
    width: room.width,
    height: room.height,
    marks: [...x.marks, ...y.marks],
    numbers: [...x.numbers, ...y.numbers],
    x: x.scale,
    y: y.scale,
    xAt,
    yAt,
  };
}

/** The rim point of the selected direction, as a tick on both rails. `at` is in raw counts as reported. */
export function railsTicks(figure: RailsFigure, at: Pair, letter: number): Mark[] {
  return [
    line('direction', null, figure.x.at(at.x), figure.xAt - letter, figure.x.at(at.x), figure.xAt + letter),
    line('direction', null, figure.y.at(at.y), figure.yAt - letter, figure.y.at(at.y), figure.yAt + letter),
  ];
}

function axisMarks(
  axis: 'x' | 'y',
  field: AxisField,
  scale: LinearScale,
  at: number,
  extent: readonly [number, number] | null,
  rests: readonly number[],
  series: readonly { readonly tone: Tone; readonly mapping: AxisMapping }[],
  letter: number,
): Mark[] {
  const [low, high] = field.up === 1 ? ENDS[axis] : [ENDS[axis][1], ENDS[axis][0]];
  const [start, end] = scale.range;
  const leading = series.at(-1);
  return [
    text('title', null, letter * 0.6, at + letter * 0.35, axis, 'start'),
    text('label', null, start - letter * 0.8, at + letter * 0.35, low, 'end'),
    text('label', null, end + letter * 0.8, at + letter * 0.35, high, 'start'),
    line('axis', null, start, at, end, at),
    ...countMarks(field, scale, at, letter),
    ...(extent === null
      ? []
      : [
          {
            kind: 'rect',
            role: 'extent',
            tone: null,
            x: scale.at(extent[0]),
            y: at - letter * 0.45,
            width: Math.max(1, scale.at(extent[1]) - scale.at(extent[0])),
            height: letter * 0.9,
          } as const,
        ]),
    ...rests.map((rest) => line('rest', null, scale.at(rest), at - letter * 0.75, scale.at(rest), at + letter * 0.75)),
    ...series.flatMap(({ tone, mapping }) =>
      [mapping.min, mapping.centre, mapping.max].map((value) => edgeMark(tone, scale.at(value), at, letter)),
    ),
    ...(leading === undefined ? [] : deflectionMarks(leading, field, scale, at, letter)),
  ];
}

/** Each mapping has a mark of its own: lines for what is, a pointer from above for the proposal, one from below for yours. */
function edgeMark(tone: Tone, x: number, at: number, letter: number): Mark {
  if (tone === 'proposed') return pointer('mark', tone, x, at - letter * 0.5, letter * 0.85);
  if (tone === 'yours') return pointer('mark', tone, x, at + letter * 0.5, -letter * 0.85);
  return line('mark', tone, x, at - letter * 1.2, x, at + letter * 1.2);
}

/** The raw scale below the rail: ticks at powers of two, and the field's own limits written at its ends. */
function countMarks(field: AxisField, scale: LinearScale, at: number, letter: number): Mark[] {
  const most = Math.max(2, Math.floor((scale.range[1] - scale.range[0]) / (letter * 5)));
  const clear = textWidth(String(field.maximum), letter) + letter;
  const ticks = countTicks(field.minimum, field.maximum, most).values.filter(
    (value) => value > field.minimum && value < field.maximum,
  );
  const written = ticks.filter(
    (value) => scale.at(value) - scale.range[0] > clear && scale.range[1] - scale.at(value) > clear,
  );
  return [
    ...[field.minimum, ...ticks, field.maximum].map((value) =>
      line('axis', null, scale.at(value), at, scale.at(value), at + letter * 1.1),
    ),
    ...[field.minimum, ...written, field.maximum].map((value) =>
      text('label', null, scale.at(value), at + letter * 2.1, signed(value)),
    ),
  ];
}

function railNumbers(
  axis: 'x' | 'y',
  leading: { readonly tone: Tone; readonly mapping: AxisMapping } | undefined,
  scale: LinearScale,
  at: number,
  letter: number,
): RailNumber[] {
  if (leading === undefined) return [];
  const { tone, mapping } = leading;
  const edges = ['min', 'centre', 'max'] as const;
  const places = spreadLabels(
    edges.map((edge) => ({ at: scale.at(mapping[edge]), size: textWidth(count(mapping[edge]), letter) })),
    scale.range[0] - letter * 5,
    scale.range[1] + letter * 5,
    letter * 0.9,
  );
  return edges.map((edge, index) => {
    const x = scale.at(mapping[edge]);
    return { of: `${axis}.${edge}` as const, tone, value: mapping[edge], x, labelX: places[index] ?? x, at };
  });
}

function numberMark({ tone, value, labelX, at }: RailNumber, letter: number): Mark {
  return text('value', tone, labelX, at - letter * 2.8, count(value));
}

/** −1 … +1 above the rail where the mapping puts them; where the count shrinks upwards, +1 stands at the low end. */
function deflectionMarks(
  leading: { readonly tone: Tone; readonly mapping: AxisMapping },
  field: AxisField,
  scale: LinearScale,
  at: number,
  letter: number,
): Mark[] {
  const { min, centre, max } = leading.mapping;
  return DEFLECTIONS.flatMap((deflection) => {
    const f = deflection * field.up;
    const raw = scale.at(f >= 0 ? centre + f * (max - centre) : centre + f * (centre - min));
    const words = deflection > 0 ? `+${deflection}` : signed(deflection, Number.isInteger(deflection) ? 0 : 1);
    return [
      text('deflection', leading.tone, raw, at - letter * 1.65, words),
      ...(Number.isInteger(deflection)
        ? []
        : [line('mark', leading.tone, raw, at - letter * 1.3, raw, at - letter * 0.6)]),
    ];
  });
}
