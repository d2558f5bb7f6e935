/** How long a stick takes to come back when it is let go. */
import type { Dwell } from '../capture/evidence/evidence.ts';
import type { Capture, StickTrack } from '../capture/evidence/track.ts';
import type { Pair } from '../pad/stick.ts';

export interface Return {
  readonly seconds: number;
  /** Whether the stick was seen to come back, to a rest that is known, before it was pushed again. */
  readonly whole: boolean;
}

/** A push goes at least so far, in half travels, and lasts so long. */
const PUSHED = 0.4;
const LEAST_PUSH_US = 60_000;
const BEGINS = 0.8;
const ENDS = 0.04;
/** A tilt that grows again by so much is the next push: the return before it took at least until then. */
const AGAIN = 0.25;
/** Out of this span the stick was brought back in some other way. */
const LONGEST_US = 5_000_000;

/**
 * Each return in the rest captures: from the last reading at 80 % of the farthest tilt of its push to the first one at 4 %,
 * between readings by straight lines, as a pad that reports slowly has few on the way. The tilt counts from where the stick then came to
 * rest (`dwells`, in order of time), as one that comes back loosely may be there at once and yet apart from the mean `rest`, which
 * stands in where none follows. One that the next push cut short took as long at least, and is not whole. `rest` in raw counts, `half` in counts.
 */
export function returnTimes(
  readings: StickTrack,
  captures: readonly Capture[],
  rest: Pair,
  half: Pair,
  dwells: readonly Dwell[] = [],
): Return[] {
  const { t, x, y } = readings;
  const tiltFrom =
    (about: Pair) =>
    (i: number): number =>
      Math.sqrt((((x[i] ?? Number.NaN) - about.x) / half.x) ** 2 + (((y[i] ?? Number.NaN) - about.y) / half.y) ** 2);
  return captures
    .filter(({ purpose }) => purpose === 'rest')
    .flatMap(({ from, to }) => {
      const times: Return[] = [];
      let most = 0;
      let outUs = 0;
      let lastOut = -1;
      let least = { size: Number.POSITIVE_INFINITY, at: 0 };
      let next = 0;
      let tilt = tiltFrom(dwells[0]?.point ?? rest);
      for (let i = from; i < to; i += 1) {
        const at = t[i] ?? Number.NaN;
        while ((dwells[next]?.endUs ?? Number.POSITIVE_INFINITY) < at) {
          next += 1;
          tilt = tiltFrom(dwells[next]?.point ?? rest);
        }
        const size = tilt(i);
        if (lastOut >= 0 && size < least.size) least = { size, at };
        if (lastOut >= 0 && least.size < PUSHED && size > least.size + AGAIN) {
          const leftUs = t[lastOut] ?? Number.NaN;
          if (leftUs - outUs >= LEAST_PUSH_US && least.at - leftUs <= LONGEST_US)
            times.push({ seconds: (least.at - leftUs) / 1e6, whole: false });
          most = 0;
          lastOut = -1;
          least = { size: Number.POSITIVE_INFINITY, at: 0 };
        }
        if (most === 0 && size >= PUSHED) outUs = at;
        if (size >= PUSHED || most > 0) most = Math.max(most, size);
        if (most > 0 && size >= BEGINS * most) {
          lastOut = i;
          least = { size: Number.POSITIVE_INFINITY, at: 0 };
        }
        if (most === 0 || size > ENDS * most) continue;
        const leftUs = crossing(t, tilt, lastOut, BEGINS * most);
        const backUs = crossing(t, tilt, i - 1, ENDS * most);
        if (leftUs - outUs >= LEAST_PUSH_US && backUs - leftUs <= LONGEST_US)
          times.push({ seconds: (backUs - leftUs) / 1e6, whole: true });
        most = 0;
        lastOut = -1;
        least = { size: Number.POSITIVE_INFINITY, at: 0 };
      }
      return times;
    });
}

/** When the tilt passes a size between a reading and the next one. */
function crossing(t: Float64Array, tilt: (i: number) => number, i: number, size: number): number {
  const [from, to] = [tilt(i), tilt(i + 1)];
  const share = from === to ? 0 : (from - size) / (from - to);
  const at = t[i] ?? Number.NaN;
  return at + Math.min(1, Math.max(0, share)) * ((t[i + 1] ?? at) - at);
}
