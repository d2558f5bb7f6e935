/** Which axes of a report are the triggers. */
import type { Control } from '../hid/control.ts';
import { pages, simulation } from '../hid/usage-names.ts';
import { axesOf, type ReportAxes } from './axes.ts';
import { secondPairs, type AxisPair } from './find-sticks.ts';
import type { StickId } from './stick.ts';

/**
 * Brake is the left trigger and accelerator the right one, as the gamepad conventions of the large systems have it.
 * Without them the pair of Rx and Ry or Z and Rz that no stick took, on a gamepad or beside a right stick. A single
 * Z beside two sticks is both triggers in one field, which cannot be told apart, and is left.
 */
export function findTriggers(
  report: ReportAxes,
  sticks: Readonly<Partial<Record<StickId, AxisPair>>>,
): Readonly<Partial<Record<StickId, Control>>> {
  const brake = axesOf(report, pages.simulation, simulation.brake)[0];
  const accelerator = axesOf(report, pages.simulation, simulation.accelerator)[0];
  if (brake !== undefined || accelerator !== undefined)
    return {
      ...(brake === undefined ? {} : { left: brake.control }),
      ...(accelerator === undefined ? {} : { right: accelerator.control }),
    };
  if (report.kind !== 'gamePad' && sticks.right === undefined) return {};
  const { rotation, z } = secondPairs(report);
  const taken = [sticks.left?.x, sticks.right?.x];
  const [free] = [z, rotation].filter((pair) => pair !== null && !taken.includes(pair.x));
  return free === undefined || free === null ? {} : { left: free.x.control, right: free.y.control };
}
