import type { StickId } from '../pad/stick.ts';
import type { Chance } from './chance.ts';

/** Where on the pad a fault sits, and which way it goes. */
export interface FaultSpot {
  readonly stick: StickId;
  /** Direction of a shift, degrees counter-clockwise from +x. */
  readonly angle: number;
  readonly axis: 'x' | 'y';
  readonly side: 1 | -1;
  /** Place along the axis, −1 … 1 as a tilt. */
  readonly at: number;
  readonly button: number;
}

export const usualSpot: FaultSpot = { stick: 'left', angle: 0, axis: 'x', side: 1, at: 0.4, button: 3 };

export function drawSpot(chance: Chance, stick: StickId = 'left'): FaultSpot {
  return {
    stick,
    angle: 360 * chance.next(),
    axis: chance.next() < 0.5 ? 'x' : 'y',
    side: chance.next() < 0.5 ? 1 : -1,
    at: 1.6 * chance.next() - 0.8,
    button: 1 + Math.floor(10 * chance.next()),
  };
}
