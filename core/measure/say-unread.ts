/** Says of captures that were taken and could not be read why not, and what to do. */
import { markedSpans } from '../capture/evidence/capture-marks.ts';
import { lastUs } from '../capture/evidence/find-captures.ts';
import type { Track } from '../capture/evidence/track.ts';
import type { StickId } from '../pad/stick.ts';
import type { Problem } from '../result.ts';
import type { DisturbanceMeasure } from './disturbance-measure.ts';
import type { FlickMeasure } from './flick-measure.ts';
import type { RestMeasure } from './rest-measure.ts';
import type { TravelMeasure } from './travel-measure.ts';

interface Read {
  readonly rest: RestMeasure | null;
  readonly travel: TravelMeasure | null;
  readonly flick: FlickMeasure | null;
  readonly disturbance: readonly DisturbanceMeasure[] | null;
}

/** One sentence for each purpose that a capture was taken for and whose measure is null. */
export function sayUnread(track: Track, stick: StickId, read: Read): Problem[] {
  const taken = new Set(markedSpans(track.marks, stick, lastUs(track)).map(({ purpose }) => purpose));
  const unread: Problem[] = [];
  if (taken.has('travel') && read.travel === null)
    unread.push({
      code: 'travel-unread',
      says: `The slow sweeps of the ${stick} stick do not go from gate to gate through the rest; sweep again along both axes, all the way.`,
    });
  if (taken.has('flick') && read.flick === null)
    unread.push({
      code: 'flick-unread',
      says:
        read.rest === null
          ? `The flicks of the ${stick} stick cannot be held against a rest, for none was measured; record the rest, too.`
          : `No flick of the ${stick} stick could be read: none goes from full tilt back to a settled rest with enough reports on the way; let it go from full tilt again, with the pad at its full report rate.`,
    });
  if (taken.has('disturbance') && read.disturbance === null)
    unread.push({
      code: 'disturbance-unread',
      says: `The rests of the ${stick} stick under disturbance could not be read; hold each of them for a second without touching that stick.`,
    });
  return unread;
}
