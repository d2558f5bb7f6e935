/** Several surveys: the log holds more than one survey of the stick, and what was done between them is not known. */
import type { Finding } from './finding.ts';
import type { Limit } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';

/** A count, held against no limit that anybody would set otherwise. */
const ONE: Limit = {
  value: 1,
  unit: 'surveys',
  from: 'workshop',
  source: 'A log is judged as one survey of one part.',
  setBy: 'default',
};

/** Measure: how many surveys of the stick the marks of the log tell apart (see `partSurveys`); null where it is one. */
export function findSeveralSurveys({ stick, surveys }: Subject): Finding | null {
  if (surveys <= 1) return null;
  const says = `This log holds ${surveys} surveys of the ${stick} stick; the last one alone is judged.`;
  return makeFinding({
    id: 'several-surveys',
    stick,
    value: surveys,
    u95: 0,
    limit: ONE,
    severity: 'caution',
    decision: 'fail',
    says: { fail: says, pass: says, 'cannot say': says },
    for: ['After a rim the rest was taken anew, and then a rim again.'],
    causes: ['The stick was surveyed again without a new log', 'Two logs were joined'],
    next: 'Survey into a log of its own whenever anything was done to the part.',
  });
}
