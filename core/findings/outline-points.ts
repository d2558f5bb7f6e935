/** The rim points that an outline of a stick's gate is fitted to. */
import type { Track } from '../capture/evidence/track.ts';
import { rawPoint } from '../mapping/raw-point.ts';
import type { StickReport } from '../measure/measure-report.ts';
import type { Pair, StickFields, StickId } from '../pad/stick.ts';
import type { RimPoint } from './outline/outline-model.ts';
import { pinnedSides, type PinnedSide } from './pinned-sides.ts';

export interface OutlinePoints {
  readonly points: readonly RimPoint[];
  /** Degrees without a point that are allowed; undefined for the usual. */
  readonly mostGap: number | undefined;
  readonly pinned: readonly PinnedSide[];
}

/** Where a sensor is at its limit the outline is led on from further away: enough to tell that a good part is cut off. */
const PINNED_GAP = 100;

/** Of a stick that the track has readings of. */
export function outlinePoints(track: Track, stick: StickId, report: StickReport): OutlinePoints {
  const step = stepOf(report);
  const fields = track.sticks[stick]?.fields;
  const pinned = pinnedSides(track, stick, report.rest?.noise ?? null, step);
  const isCut = pinned.length > 0 || report.rim?.directions.some(({ atLimit }) => atLimit) === true;
  return {
    points: fields === undefined ? [] : rimPoints(report, fields, pinned, step),
    mostGap: isCut ? PINNED_GAP : undefined,
    pinned,
  };
}

export function stepOf({ rest }: StickReport): Pair {
  return rest?.step ?? { x: 1, y: 1 };
}

/** Covered rim points that no limit of a field or a sensor holds back. */
function rimPoints(report: StickReport, fields: StickFields, pinned: readonly PinnedSide[], step: Pair): RimPoint[] {
  const about = report.rest?.point;
  return (report.rim?.directions ?? []).flatMap(({ angle, x, y, covered, atLimit }) => {
    if (x === null || y === null || !covered || atLimit) return [];
    const raw = about === undefined ? null : rawPoint(about, fields, { x, y });
    const isPinned = raw !== null && pinned.some(({ axis, count }) => Math.abs(raw[axis] - count) <= 1.5 * step[axis]);
    return isPinned ? [] : [{ angle, dx: x, dy: y }];
  });
}
