/** Holds what was measured of a pad whose truth is known against that truth: the instrument's check of itself. */
import { linearity } from '../numeric/linearity.ts';
import { STICKS, type Pair, type StickId } from '../pad/stick.ts';
import type { TrackMeasures } from './measure-report.ts';

/** What is true of one stick, in counts as reported. */
export interface KnownStick {
  /** Count of each axis at no tilt. */
  readonly rest: Pair;
  /** Counts at the gate, without noise. */
  readonly gate: { readonly right: number; readonly up: number; readonly left: number; readonly down: number };
  /** σ of a reading, rounding included. */
  readonly noise: Pair;
}

export interface SelfCheckItem {
  /** E.g. `left stick, rest x`. */
  readonly of: string;
  readonly known: number;
  readonly measured: number | null;
  /** How far apart they may be. */
  readonly within: number;
  readonly holds: boolean;
}

/** Counts by which a rim point may be off: σ of a reading or two, after the median of five, and the hand's pressure. */
const GATE_WITHIN = 6;
/** Shares by which noise and report rate may be off. */
const NOISE_WITHIN = 0.15;
const RATE_WITHIN = 0.01;

const SIDES = [
  ['right', 0, 'x'],
  ['up', 90, 'y'],
  ['left', 180, 'x'],
  ['down', 270, 'y'],
] as const;

/**
 * Rest within its own stated uncertainty and a count, gate on four sides, noise, report rate; linearity over both sides of each axis; the reports that were lost must
 * be none. What could not be measured does not hold. In a sound program every item holds.
 */
export function judgeSelfCheck(
  known: Readonly<Record<StickId, KnownStick>>,
  rateHz: number,
  measures: TrackMeasures,
): SelfCheckItem[] {
  return [
    item('report rate, Hz', rateHz, measures.log.rateHz, RATE_WITHIN * rateHz),
    ...STICKS.flatMap((stick) => checkStick(stick, known[stick], measures)),
  ];
}

function checkStick(stick: StickId, known: KnownStick, measures: TrackMeasures): SelfCheckItem[] {
  const { rest = null, rim = null } = measures.sticks[stick] ?? {};
  const ofRest = (['x', 'y'] as const).flatMap((axis) => [
    item(`${stick} stick, rest ${axis}`, known.rest[axis], rest?.point[axis] ?? null, (rest?.u95[axis] ?? 0) + 1),
    item(
      `${stick} stick, noise ${axis}`,
      known.noise[axis],
      rest?.noise?.[axis] ?? null,
      NOISE_WITHIN * known.noise[axis],
    ),
  ]);
  const ofGate = SIDES.map(([side, angle, axis]) => {
    const way = rim?.directions.find((one) => one.angle === angle)?.[axis] ?? null;
    // Differences are y up, counts as reported may grow either way: the sizes are compared.
    const far = Math.abs(known.gate[side] - known.rest[axis]);
    return item(`${stick} stick, rest to gate ${side}`, far, way === null ? null : Math.abs(way), GATE_WITHIN);
  });
  return [...ofRest, ...ofGate, ...checkLines(stick, known, measures)];
}

/** Both ends of the travel and the rest between them, measured over known: how far off their best line they lie, counts. */
function checkLines(stick: StickId, known: KnownStick, measures: TrackMeasures): SelfCheckItem[] {
  const directions = measures.sticks[stick]?.rim?.directions ?? [];
  const reach = (angle: number, axis: 'x' | 'y'): number =>
    Math.abs(directions.find((one) => one.angle === angle)?.[axis] ?? Number.NaN);
  const off = (axis: 'x' | 'y', side: keyof KnownStick['gate'], across: keyof KnownStick['gate'], angle: number) => {
    const far = (to: keyof KnownStick['gate']): number => Math.abs(known.gate[to] - known.rest[axis]);
    const line = linearity(
      [-far(across), 0, far(side)],
      [-reach(angle + 180, axis), 0, reach(angle, axis)],
      'independent',
    );
    return item(`${stick} stick, off a line ${axis}`, 0, line?.deviation ?? null, GATE_WITHIN);
  };
  return [off('x', 'right', 'left', 0), off('y', 'up', 'down', 90)];
}

function item(of: string, known: number, measured: number | null, within: number): SelfCheckItem {
  return { of, known, measured, within, holds: measured !== null && Math.abs(measured - known) <= within };
}
