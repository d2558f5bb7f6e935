/** Parts the releases that no push came before from those that a stick came back from. */
import type { Dwell } from './evidence.ts';
import { TILT_SHARE, tiltOf } from './describe-dwell.ts';
import { indexAt } from './find-index.ts';
import type { StickTrack, Track } from './track.ts';

export interface Pushed {
  readonly pushed: readonly Dwell[];
  /** Each with its number among all, from 1. */
  readonly unpushed: readonly { readonly number: number; readonly dwell: Dwell }[];
}

/**
 * A stick that never left its rest by 15 % of the half range since the release before was not let go again: its rest is that of the
 * release before, told twice. Of the first release, and of one after a gap, nobody knows, but that none is a release of a stick that
 * never left its rest in the whole log. `dwells` in order of time.
 */
export function partUnpushed(track: StickTrack, dwells: readonly Dwell[], gaps: Track['gaps']): Pushed {
  const isUnpushed = dwells.map((dwell, i) => {
    const before = dwells[i - 1];
    if (before === undefined) return gaps.length === 0 && !leaves(track, 0, Number.POSITIVE_INFINITY, dwell);
    if (gaps.some(({ t }) => t > before.endUs && t <= dwell.startUs)) return false;
    return !leaves(track, before.endUs, dwell.startUs, dwell);
  });
  return {
    pushed: dwells.filter((_, i) => isUnpushed[i] !== true),
    unpushed: dwells.flatMap((dwell, i) => (isUnpushed[i] === true ? [{ number: i + 1, dwell }] : [])),
  };
}

function leaves({ t, x, y, fields }: StickTrack, fromUs: number, toUs: number, { point }: Dwell): boolean {
  for (let i = indexAt(t, fromUs); i < t.length && (t[i] ?? toUs) < toUs; i += 1) {
    const away = { x: (x[i] ?? point.x) - point.x, y: (y[i] ?? point.y) - point.y };
    if (tiltOf(fields, away) >= TILT_SHARE) return true;
  }
  return false;
}
