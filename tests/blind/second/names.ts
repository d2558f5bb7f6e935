/** What a finding may be called that is right about a fault, by the meaning of its id; some have no id in the program yet. */
import type { FindingId } from '../../../core/findings/finding.ts';
import type { FaultName } from './faults.ts';
import type { PadPlan } from './pad-plan.ts';

type Name =
  | FindingId
  | 'signal-lost'
  | 'slow-return'
  | 'axes-together'
  | 'hidden-rest'
  | 'drifting-rest'
  | 'two-rests'
  | 'uneven-reach';

const rightNames: Readonly<Record<FaultName, readonly Name[]>> = {
  'off-centre-part': ['off-centre-part', 'seat-not-flat'],
  'seat-tilt': ['seat-not-flat', 'off-centre-part'],
  skew: ['skewed-part', 'axes-together'],
  'short-side': ['short-range', 'uneven-reach'],
  turned: ['turned-part'],
  clipped: ['clipped-sensor', 'short-range'],
  curved: ['uneven-reach'],
  // A share of one axis on the other is, by the readings, an axis that stands askew.
  'shared-ground': ['axes-together', 'skewed-part'],
  'dead-sector': ['signal-lost'],
  'loose-sector': ['signal-lost'],
  'dead-spot': ['signal-lost', 'worn-track'],
  'worn-track': ['worn-track', 'signal-lost'],
  contact: ['signal-lost', 'noisy-joint'],
  spikes: ['signal-lost', 'noisy-joint'],
  noise: ['noisy-joint'],
  'slow-return': ['slow-return', 'loose-return'],
  'loose-return': ['loose-return'],
  overshoot: ['overshoot'],
  'two-rests': ['two-rests', 'loose-return'],
  'outlier-rest': ['odd-release', 'loose-return', 'two-rests'],
  'drifting-rest': ['drifting-rest', 'warming-up', 'loose-return'],
  'stale-numbers': ['stale-mapping'],
  'firmware-band': ['hidden-rest'],
  'inverted-axis': ['inverted-axis'],
  'swapped-axes': ['swapped-axes'],
  'trigger-stays': ['inputs-fail'],
  'trigger-dead': ['inputs-fail'],
};

/** Behind a pad's own mapping these cannot be told from numbers that do not fit. */
const LIKE_STALE: ReadonlySet<FaultName> = new Set(['off-centre-part', 'seat-tilt', 'short-side', 'stale-numbers']);

export function namesFor(fault: FaultName, { domain }: Pick<PadPlan, 'domain'>): readonly Name[] {
  if (domain === 'sensor' || !LIKE_STALE.has(fault)) return rightNames[fault];
  return [...rightNames[fault], 'stale-mapping', 'off-centre-part'];
}
