/** Parts of a stick's track without a gap inside. */
import { indexAt } from './find-index.ts';
import { GAP_US } from './still-spans.ts';
import type { StickTrack, Track } from './track.ts';

/** Indices into the stick's columns, end exclusive. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * Readings of a span of time, parted wherever reports were lost and more than 50 ms are missing. A pad that is silent
 * because nothing changes has no gap.
 */
export function unbrokenStretches(
  { t }: Pick<StickTrack, 't'>,
  startUs: number,
  endUs: number,
  gaps: Track['gaps'],
): Stretch[] {
  const stretches: Stretch[] = [];
  const to = indexAt(t, endUs + 1);
  let from = indexAt(t, startUs);
  for (const gap of gaps) {
    const after = indexAt(t, gap.t);
    if (after <= from || after >= to || (t[after] ?? 0) - (t[after - 1] ?? 0) <= GAP_US) continue;
    stretches.push({ from, to: after });
    from = after;
  }
  if (from < to) stretches.push({ from, to });
  return stretches;
}
