/** A finding by hand: what is not said is empty. */
import type { Finding } from '../../../core/findings/finding.ts';

export function makeFinding(part: Partial<Finding> = {}): Finding {
  return {
    id: 'seat-not-flat',
    severity: 'fault',
    stick: 'left',
    value: 0.05,
    u95: 0.004,
    unit: 'share of the half travel',
    limit: 0.03,
    limitFrom: 'workshop',
    decision: 'fail',
    says: 'The rest stands 5.0 % off the centre of the gate.',
    for: [],
    against: [],
    causes: [],
    next: '',
    shows: { directions: [], spans: [], counts: [] },
    ...part,
  };
}
