/** One blind case: a pad drawn by its seed, a fault of some size at a drawn spot, and what the product makes of its survey. */
import type { FindingId } from '../../core/findings/finding.ts';
import { judgeTrack } from '../../core/findings/judge-track.ts';
import { createChance } from '../../core/simulate/chance.ts';
import { drawUnit, type UnitWish } from '../../core/simulate/draw-unit.ts';
import { applyFault, type FaultName } from '../../core/simulate/faults.ts';
import { drawSpot } from '../../core/simulate/fault-spot.ts';
import { surveyUnit } from './survey-unit.ts';

export interface BlindCase {
  readonly seed: number;
  readonly faults: readonly { readonly fault: FaultName; readonly size: number }[];
  readonly wish: UnitWish;
}

export interface BlindAnswer {
  /** Failed findings of the stick and the pad, the one that accounts for most first. */
  readonly named: readonly FindingId[];
  readonly verdict: string;
  readonly millis: number;
}

const SPOT_STREAM = 47;
/** Faults that take captures of their own. */
const LONG: ReadonlySet<FaultName> = new Set<FaultName>(['disturbed-rest', 'warming-up']);

export function judgeUnit({ seed, faults, wish }: BlindCase): BlindAnswer {
  const from = performance.now();
  const chance = createChance(seed, SPOT_STREAM);
  const build = faults.reduce(
    (pad, { fault, size }) => applyFault(pad, fault, size, drawSpot(chance)),
    drawUnit(seed, wish),
  );
  // A healthy stick is tried with all of it: any capture may call it faulty.
  const isLong = faults.length === 0 || faults.some(({ fault }) => LONG.has(fault));
  const { findings, verdict } = judgeTrack(surveyUnit(build, seed, isLong), null);
  const named = findings.filter(({ decision, stick }) => decision === 'fail' && stick !== 'right').map(({ id }) => id);
  return { named, verdict: verdict.left ?? 'none', millis: performance.now() - from };
}
