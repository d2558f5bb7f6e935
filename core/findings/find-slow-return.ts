/** Slow return: let go, the stick takes long to come back. */
import { quantile } from '../numeric/quantile.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';

/** With fewer returns nothing is said of the usual one. */
const LEAST = 4;
/** Expanded uncertainty of a median of n: 1.96 · 1.2533 · σ/√n, σ from the quartiles. */
const MEDIAN_U = 1.96 * 1.2533;
const QUARTILES = 1.349;

/**
 * Measure: the median time from 80 % to 4 % of the farthest tilt over the releases of the rest capture (see `returnTimes`), seconds. U: that of a median of
 * normal scatter, and one interval of the reports. Where most were not seen to come back, they take longer than that. Null with fewer than four
 * returns, or where these tell nothing.
 */
export function findSlowReturn({ returns, intervalUs, stick }: Subject, limits: Limits): Finding | null {
  if (returns.length < LEAST) return null;
  const times = returns.map(({ seconds }) => seconds);
  const cut = returns.filter(({ whole }) => !whole).length;
  const isCut = 2 * cut > times.length;
  const value = quantile(times, 0.5);
  const sigma = (quantile(times, 0.75) - quantile(times, 0.25)) / QUARTILES;
  const u95 = Math.hypot((MEDIAN_U * sigma) / Math.sqrt(returns.length), (intervalUs ?? 0) / 1e6);
  // What takes longer than a short time may be quick or slow.
  if (isCut && value - u95 <= limits.slowReturn.value) return null;
  const says = `Let go, the ${stick} stick takes ${isCut ? 'longer than ' : ''}${(1000 * value).toFixed(0)} ms ± ${(1000 * u95).toFixed(0)} ms to come back`;
  return makeFinding({
    id: 'slow-return',
    stick,
    value,
    u95,
    limit: limits.slowReturn,
    severity: 'fault',
    says: {
      fail: `${says}: it creeps back.`,
      pass: `${says}, as a spring brings it.`,
      'cannot say': `${says}; whether that is too slow cannot be told.`,
    },
    for: [
      `Median of ${returns.length} releases.`,
      cut === 0
        ? null
        : `${cut} of them were not seen to come back before the next push, and count for as long as they were left.`,
    ],
    against: ['A thumb that leads the stick back instead of letting it snap looks the same.'],
    causes: [
      'Friction in the part: dirt, dried grease, a bent shaft',
      'The shell, cap or rubber touches the stick',
      'A weak or broken spring',
    ],
    next: 'Let it snap back once more with the shell open: if it is quick then, free the stick; if not, replace the part.',
    unsure: 'Record the rest once more and let the thumb slip off the stick all at once.',
  });
}
