/** In a log without capture marks: where the stick lies still at its rest while a button is held. */
import { describeDwell, TILT_SHARE, tiltOf } from '../capture/evidence/describe-dwell.ts';
import type { Dwell } from '../capture/evidence/evidence.ts';
import { indexAt } from '../capture/evidence/find-index.ts';
import { settleLimit } from '../capture/evidence/settle-detector.ts';
import type { StillSpan } from '../capture/evidence/still-spans.ts';
import type { StickTrack, Track } from '../capture/evidence/track.ts';
import type { Pair, StickId } from '../pad/stick.ts';

export interface Disturbed {
  readonly of: string;
  readonly dwells: readonly Dwell[];
  readonly startUs: number;
  readonly endUs: number;
}

/** A press shorter than this is no dwell. */
const LEAST_US = 300_000;
/** The first and last of a press, in which the thumb still moves. */
const EDGE_US = 80_000;

/** One for each button held alone; several presses of it are its dwells. `click` where the pad says that it is the stick's own. */
export function findHeldStills(track: Track, stick: StickId, readings: StickTrack, rest: Pair): Disturbed[] {
  return (track.inputs?.buttons ?? []).flatMap(({ usage, t, down }) => {
    const dwells = Array.from(t).flatMap((startUs, i) => {
      const endUs = t[i + 1];
      if (down[i] !== 1 || endUs === undefined || endUs - startUs < LEAST_US) return [];
      const span = { startUs: startUs + EDGE_US, endUs: endUs - EDGE_US };
      const counts = isAtRest(readings, rest, span.startUs, span.endUs) && isStill(readings, span);
      return counts ? [describeDwell(readings, span)] : [];
    });
    const [first, last] = [dwells[0], dwells.at(-1)];
    if (first === undefined || last === undefined) return [];
    const of = track.layout.clicks[stick] === usage ? 'click' : `button ${usage} held`;
    return [{ of, dwells, startUs: first.startUs, endUs: last.endUs }];
  });
}

/** Its two halves agree as a settled stick's do. */
function isStill(track: StickTrack, { startUs, endUs }: StillSpan): boolean {
  const middle = (startUs + endUs) / 2;
  const [one, other] = [
    describeDwell(track, { startUs, endUs: middle }),
    describeDwell(track, { startUs: middle, endUs }),
  ];
  const axes = ['x', 'y'] as const;
  return axes.every((axis) => Math.abs(one.point[axis] - other.point[axis]) <= settleLimit(track.fields[axis]));
}

function isAtRest({ t, x, y, fields }: StickTrack, rest: Pair, startUs: number, endUs: number): boolean {
  const end = indexAt(t, endUs);
  const first = Math.max(0, indexAt(t, startUs) - 1);
  for (let i = first; i < end; i += 1)
    if (tiltOf(fields, { x: (x[i] ?? Number.NaN) - rest.x, y: (y[i] ?? Number.NaN) - rest.y }) >= TILT_SHARE)
      return false;
  return end > first;
}
