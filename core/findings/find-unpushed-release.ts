/** Unpushed release: a release was asked for, and the stick had not been pushed. */
import type { Finding } from './finding.ts';
import type { Limit } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';

/** A count, held against no limit that anybody would set otherwise. */
const NONE: Limit = {
  value: 0,
  unit: 'releases',
  from: 'workshop',
  source: 'A release is what follows a push.',
  setBy: 'default',
};

/** Measure: how many of the releases no push came before (see `partUnpushed`); null where there is none. */
export function findUnpushedRelease({ report, stick, odd, unpushed }: Subject): Finding | null {
  if (report.rest === null || unpushed.length === 0) return null;
  const numbers = unpushed.map(({ number }) => number);
  const all = report.rest.releases + odd.length + unpushed.length;
  const [first = 0] = numbers;
  const listed =
    numbers.length === 1 ? `${first}` : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1) ?? first}`;
  const says =
    numbers.length === 1
      ? `Release ${listed} of ${all} of the ${stick} stick came after no push: it is left out; take it again.`
      : `Releases ${listed} of ${all} of the ${stick} stick came after no push: they are left out; take them again.`;
  return makeFinding({
    id: 'unpushed-release',
    stick,
    value: numbers.length,
    u95: 0,
    limit: NONE,
    severity: 'caution',
    decision: 'fail',
    says: { fail: says, pass: says, 'cannot say': says },
    for: ['The stick stayed where the release before had left it.'],
    causes: ['A prompt was answered without a push', 'The other stick was pushed'],
    next: 'Record the rest once more: push to the gate, then let go.',
    shows: { spans: unpushed.map(({ dwell }) => ({ startUs: dwell.startUs, endUs: dwell.endUs })) },
  });
}
