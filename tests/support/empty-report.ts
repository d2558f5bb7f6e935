/** What the bench tells of a log whose sticks have no measures: for tests that look at something else. */
import { sayLimits, type MeasureReport } from '../../core/findings/judge-track.ts';
import { defaultLimits } from '../../core/findings/limits.ts';
import type { Domain } from '../../core/pad/stick.ts';
import type { Reply } from '../../shared/contract.ts';

/** One report of a pad at stage `fitted`. */
export function emptyReport(domain: Domain = 'sensor'): Reply<'surveys.open'>['report'] {
  return structuredClone(report(domain)) as Reply<'surveys.open'>['report'];
}

function report(domain: Domain): MeasureReport {
  return {
    kind: 'stickwright-measure',
    version: 1,
    log: {
      durationUs: 1,
      reports: 1,
      lost: null,
      rateHz: 1000,
      domain,
      stage: 'fitted',
      interval: null,
      duplicates: 0,
      damaged: 0,
      ended: null,
      unread: null,
    },
    mappingFrom: 'range',
    captures: 'inferred',
    sticks: {},
    inputs: null,
    findings: [],
    verdict: {},
    verdictWhy: {},
    limits: sayLimits(defaultLimits),
  };
}
