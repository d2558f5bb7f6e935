/** Late reports: they arrive unevenly here. */
import type { LogMeasure } from '../measure/timing.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';

const LEAST_REPORTS = 1000;
/** A pad that reports only changes repeats itself no more often: where a change goes astray on the way, the next may undo it. */
const MOST_REPEATED = 0.001;

/**
 * Measure: the 99 % quantile of the intervals as received, in median intervals. Nothing to judge in a pad that reports only
 * changes: it hardly ever repeats a report, and is silent at rest.
 */
export function findLateReports(log: LogMeasure, limits: Limits): Finding | null {
  const { interval, reports } = log;
  if (interval === null || interval.p50Us <= 0 || reports < LEAST_REPORTS) return null;
  const value = interval.p99Us / interval.p50Us;
  const onChange = log.duplicates <= MOST_REPEATED * reports && value > limits.late.value;
  const says = `One report in a hundred comes ${(interval.p99Us / 1000).toFixed(1)} ms or more after the one before, ${value.toFixed(1)} times the usual interval`;
  return makeFinding({
    id: 'late-reports',
    stick: null,
    value,
    u95: 0.1 * value,
    limit: limits.late,
    severity: 'caution',
    ...(onChange ? { decision: 'cannot say' as const } : {}),
    says: {
      fail: `${says}.`,
      pass: 'Reports arrive evenly.',
      'cannot say': onChange
        ? `${says}; the pad seems to report only what changes.`
        : `${says}; whether that is too much cannot be told.`,
    },
    for: [`Longest interval ${(interval.maxUs / 1000).toFixed(1)} ms.`],
    against: ['Times are as received here: a busy computer stamps late.'],
    causes: ['A weak radio link or a hub in between', 'A computer that is busy'],
    next: 'Use a cable straight to the computer, close other programs and record it again.',
  });
}
