/** Whether a mapping would only hide what is wrong with the part or its fit. */
import type { StickId } from '../pad/stick.ts';
import type { Finding, FindingId } from './finding.ts';

/** What no number cures: the part, its seat, its joints, its wires. */
const IS_MECHANICAL: Readonly<Record<FindingId, boolean>> = {
  'stale-mapping': false,
  'off-centre-part': false,
  'seat-not-flat': true,
  'turned-part': true,
  'skewed-part': true,
  'short-range': true,
  'clipped-sensor': true,
  'worn-track': true,
  'noisy-joint': true,
  'dead-axis': true,
  'swapped-axes': true,
  'inverted-axis': true,
  'loose-return': true,
  overshoot: true,
  'layers-disagree': false,
  'inputs-fail': false,
  'disturbed-rest': false,
  'warming-up': true,
  'signal-lost': true,
  'slow-return': true,
  'axes-together': true,
  'drifting-rest': true,
  'two-rests': true,
  'odd-release': false,
  'unpushed-release': false,
  'uneven-reach': false,
  'hidden-rest': false,
  'several-surveys': false,
  'rest-not-measured': false,
  'rim-not-covered': false,
  'mapping-of-another-pad': false,
  'late-reports': false,
};

/** One sentence that names the failed findings of the stick that a mapping leaves as they are; null where there is none. */
export function hiddenFault(findings: readonly Finding[], stick: StickId): string | null {
  const found = findings.filter((one) => one.stick === stick && one.decision === 'fail' && IS_MECHANICAL[one.id]);
  if (found.length === 0) return null;
  const names = [...new Set(found.map(({ id }) => id.replaceAll('-', ' ')))].join(', ');
  return `New numbers only hide what the findings say of the ${stick} stick (${names}): see to that first, the numbers follow.`;
}
