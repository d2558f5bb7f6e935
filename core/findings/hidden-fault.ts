/** Whether a mapping would only hide what is wrong with the part or its fit. */
import type { StickId } from '../pad/stick.ts';
import type { Finding, FindingId } from './finding.ts';

/** What no number cures: the part, its seat, its joints, its wires. */
const MECHANICAL: ReadonlySet<FindingId> = new Set<FindingId>([
  'seat-not-flat',
  'turned-part',
  'skewed-part',
  'short-range',
  'clipped-sensor',
  'worn-track',
  'noisy-joint',
  'dead-axis',
  'swapped-axes',
  'inverted-axis',
  'loose-return',
  'overshoot',
  'warming-up',
]);

/** One sentence that names the failed findings of the stick that a mapping leaves as they are; null where there is none. */
export function hiddenFault(findings: readonly Finding[], stick: StickId): string | null {
  const found = findings.filter((one) => one.stick === stick && one.decision === 'fail' && MECHANICAL.has(one.id));
  if (found.length === 0) return null;
  const names = [...new Set(found.map(({ id }) => id.replaceAll('-', ' ')))].join(', ');
  return `New numbers only hide what the findings say of the ${stick} stick (${names}): see to that first, the numbers follow.`;
}
