/** Which axes of a report are the left and the right stick. */
import { desktop, pages } from '../hid/usage-names.ts';
import { areAlike, axesOf, isOfVehicle, type Axis, type ReportAxes } from './axes.ts';
import type { StickId } from './stick.ts';

export interface AxisPair {
  readonly x: Axis;
  readonly y: Axis;
}

/**
 * X and Y are the left stick. For the right one Rx and Ry, Z and Rz, or a second X and Y are in question; which of
 * them are triggers cannot be read from a usage, so what decides is, in this order: a range like the left stick's, a
 * collection of their own, standing side by side, following the left stick directly, and last the name Rx and Ry. On
 * what calls itself a joystick a second stick must pass all that matters there: a like range, side by side, beside the
 * first, and no rudder, throttle, slider or wheel in the report. A pad with one stick has it as `left`.
 */
export function findSticks(report: ReportAxes): Readonly<Partial<Record<StickId, AxisPair>>> {
  const left = findLeft(report);
  if (left === null) return {};
  const right = findRight(report, left);
  return right === null ? { left } : { left, right };
}

/** Rx and Ry, and Z and Rz, where both axes of the pair are there and alike. */
export function secondPairs(report: ReportAxes): { readonly rotation: AxisPair | null; readonly z: AxisPair | null } {
  return { rotation: pairOf(report, desktop.rx, desktop.ry, 0), z: pairOf(report, desktop.z, desktop.rz, 0) };
}

function findLeft(report: ReportAxes): AxisPair | null {
  const pair = pairOf(report, desktop.x, desktop.y, 0);
  if (pair !== null) return report.kind === 'gamePad' || areNeighbours(report, pair) ? pair : null;
  // Half of a split pad may have only the right one. Where an X or Y stands alone it steers, and the rest are pedals.
  const lone = [desktop.x, desktop.y].some((usage) => axesOf(report, pages.genericDesktop, usage).length > 0);
  if (lone || report.kind !== 'gamePad') return null;
  const { rotation, z } = secondPairs(report);
  return rotation ?? z;
}

function findRight(report: ReportAxes, left: AxisPair): AxisPair | null {
  const { rotation, z } = secondPairs(report);
  const candidates = [pairOf(report, desktop.x, desktop.y, 1), rotation, z].filter(
    (pair) => pair !== null && pair.x !== left.x && mayBeSecond(report, left, pair),
  );
  let best: AxisPair | null = null;
  for (const pair of candidates)
    if (pair !== null && (best === null || rank(report, left, pair) > rank(report, left, best))) best = pair;
  return best;
}

function mayBeSecond(report: ReportAxes, left: AxisPair, pair: AxisPair): boolean {
  if (!areAlike(left.x, pair.x)) return false;
  if (report.kind === 'gamePad') return true;
  return report.kind === 'joystick' && !isOfVehicle(report) && areSideBySide(pair) && isBeside(left, pair);
}

/** Larger is likelier; each reason outweighs all after it. Equal ranks keep the first candidate. */
function rank(report: ReportAxes, left: AxisPair, pair: AxisPair): number {
  return (isAlone(report, left, pair) ? 4 : 0) + (areSideBySide(pair) ? 2 : 0) + (isBeside(left, pair) ? 1 : 0);
}

/** The pair and nothing else fills a collection, apart from the left stick's. */
function isAlone(report: ReportAxes, left: AxisPair, { x, y }: AxisPair): boolean {
  const { collection } = x.control;
  if (collection === null || collection !== y.control.collection || collection === left.x.control.collection)
    return false;
  return report.controls.filter((control) => control.collection === collection).length === 2;
}

function areSideBySide({ x, y }: AxisPair): boolean {
  return Math.abs(x.order - y.order) === 1;
}

function isBeside(left: AxisPair, pair: AxisPair): boolean {
  const [first, last] = [Math.min(left.x.order, left.y.order), Math.max(left.x.order, left.y.order)];
  return [pair.x.order, pair.y.order].some((order) => order === first - 1 || order === last + 1);
}

/** Nothing but padding stands between the two: a wheel has its buttons between steering and pedals. */
function areNeighbours(report: ReportAxes, { x, y }: AxisPair): boolean {
  const from = Math.min(x.control.bitOffset, y.control.bitOffset);
  const to = Math.max(x.control.bitOffset, y.control.bitOffset);
  return !report.controls.some((control) => control.bitOffset > from && control.bitOffset < to);
}

function pairOf(report: ReportAxes, xUsage: number, yUsage: number, index: number): AxisPair | null {
  const x = axesOf(report, pages.genericDesktop, xUsage)[index];
  const y = axesOf(report, pages.genericDesktop, yUsage)[index];
  if (x === undefined || y === undefined || !areAlike(x, y)) return null;
  // Steering in degrees beside a pedal without a unit. Between pairs units say nothing: a hat's is often left in force.
  return x.control.unit === y.control.unit ? { x, y } : null;
}
