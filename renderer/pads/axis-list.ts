/** The axes and triggers a pad has, in the order they are shown, each with its column in the ring. */
import type { PadLayout } from '../../core/pad/layout.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';

export interface AxisLine {
  readonly id: string;
  readonly stick: StickId;
  readonly kind: 'x' | 'y' | 'trigger';
  /** E.g. "left x". */
  readonly says: string;
  readonly column: number;
  readonly minimum: number;
  readonly maximum: number;
  /** Which way the field's lower and upper ends lie. */
  readonly lowEnd: string;
  readonly highEnd: string;
}

/** Column of a stick's axis in the ring. */
export function axisColumn(stick: StickId, axis: 'x' | 'y'): number {
  return (stick === 'left' ? 0 : 2) + (axis === 'x' ? 0 : 1);
}

export function listAxes(layout: PadLayout): AxisLine[] {
  const sticks = STICKS.flatMap((stick): AxisLine[] => {
    const fields = layout.sticks[stick];
    if (fields === undefined) return [];
    return (['x', 'y'] as const).map((axis) => {
      const { minimum, maximum, up } = fields[axis];
      const [low, high] = axis === 'x' ? (['left', 'right'] as const) : (['down', 'up'] as const);
      return {
        id: `${stick}-${axis}`,
        stick,
        kind: axis,
        says: `${stick} ${axis}`,
        column: axisColumn(stick, axis),
        minimum,
        maximum,
        lowEnd: up === 1 ? low : high,
        highEnd: up === 1 ? high : low,
      };
    });
  });
  const triggers = STICKS.flatMap((stick): AxisLine[] => {
    const control = layout.triggers[stick]?.control;
    if (control === undefined) return [];
    return [
      {
        id: `${stick}-trigger`,
        stick,
        kind: 'trigger',
        says: `${stick} trigger`,
        column: stick === 'left' ? 4 : 5,
        minimum: control.logicalMinimum,
        maximum: control.logicalMaximum,
        lowEnd: 'released',
        highEnd: 'pressed',
      },
    ];
  });
  return [...sticks, ...triggers];
}
