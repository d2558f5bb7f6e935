/** Odd release: one or two of many came to rest far from all others. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

/** Measure: how far the oddest release lies from the mean of the others, in shares of the half travel; null where none is odd (see `partOdd`). */
export function findOddRelease({ report, half, stick, odd }: Subject, limits: Limits): Finding | null {
  const { rest } = report;
  if (rest === null || odd.length === 0) return null;
  const away = odd
    .map(({ dwell, number }) => ({
      dwell,
      number,
      share: Math.hypot((dwell.point.x - rest.point.x) / half.x, (dwell.point.y - rest.point.y) / half.y),
    }))
    .toSorted((a, b) => b.share - a.share);
  const [worst] = away;
  if (worst === undefined) return null;
  const all = rest.releases + odd.length;
  const says =
    odd.length === 1
      ? `Release ${worst.number} of ${all} of the ${stick} stick came to rest ${percent(worst.share)} of the half travel from all others`
      : `Releases ${away
          .map(({ number }) => number)
          .toSorted((a, b) => a - b)
          .join(
            ' and ',
          )} of ${all} of the ${stick} stick came to rest up to ${percent(worst.share)} of the half travel from all others`;
  return makeFinding({
    id: 'odd-release',
    stick,
    value: worst.share,
    u95: 0,
    limit: limits.looseReturn,
    severity: 'caution',
    decision: 'fail',
    says: {
      fail: `${says}: ${odd.length === 1 ? 'it is' : 'they are'} left out; take ${odd.length === 1 ? 'it' : 'them'} again.`,
      pass: `${says}.`,
      'cannot say': `${says}.`,
    },
    for: [`The other ${rest.releases} lie together.`],
    against: [],
    causes: [
      'The thumb touched the stick, or led it back',
      'The stick hung for once: it will again, if it is the part',
    ],
    next: 'Record the rest once more and let the thumb slip off; if one of them lies apart again, free the stick or fit another part.',
    shows: { spans: away.map(({ dwell }) => ({ startUs: dwell.startUs, endUs: dwell.endUs })) },
  });
}
