/** What a survey tells of the gate it was taken in, for surveys of other parts in the same shell. */
import type { Track } from '../capture/evidence/track.ts';
import { withoutLosses } from '../capture/evidence/without-losses.ts';
import { measureTrack } from '../measure/measure-report.ts';
import { STICKS, type StickId } from '../pad/stick.ts';
import { bestFit } from './outline/fit-outline.ts';
import { knownGate, type GateSource, type KnownGate } from './outline/known-gate.ts';
import { outlinePoints } from './outline-points.ts';

export type KnownGates = Readonly<Partial<Record<StickId, KnownGate>>>;

/** The gates of all sticks whose rim and rest the track holds. */
export function gatesFromTrack(whole: Track, from: GateSource): KnownGates {
  const track = withoutLosses(whole);
  const { sticks } = measureTrack(track, null);
  return Object.fromEntries(
    STICKS.flatMap((stick) => {
      const report = sticks[stick];
      if (report === undefined || (report.rest?.releases ?? 0) === 0) return [];
      const { points, mostGap } = outlinePoints(track, stick, report);
      const fit = bestFit(points, { mostGap });
      const known = fit === null ? null : knownGate(fit, from);
      return known === null ? [] : [[stick, known] as const];
    }),
  );
}
