/** Orders findings so that the one that accounts for most comes first. */
import type { Decision, Finding, FindingId } from './finding.ts';

/** What each finding, where it fails, brings about by itself: those then rank below it. None is said, not left out. */
const CONSEQUENCES: Readonly<Record<FindingId, readonly FindingId[]>> = {
  'mapping-of-another-pad': ['stale-mapping', 'layers-disagree'],
  'warming-up': ['loose-return', 'stale-mapping', 'off-centre-part'],
  'dead-axis': [
    'mapping-of-another-pad',
    'swapped-axes',
    'inverted-axis',
    'turned-part',
    'skewed-part',
    'off-centre-part',
    'stale-mapping',
    'loose-return',
    'overshoot',
    'noisy-joint',
    'clipped-sensor',
    'worn-track',
    'short-range',
    'seat-not-flat',
  ],
  'swapped-axes': ['turned-part', 'inverted-axis', 'stale-mapping', 'off-centre-part'],
  'inverted-axis': ['turned-part', 'stale-mapping', 'off-centre-part'],
  'signal-lost': [
    'worn-track',
    'noisy-joint',
    'loose-return',
    'two-rests',
    'overshoot',
    'slow-return',
    'clipped-sensor',
    'stale-mapping',
    'uneven-reach',
  ],
  'axes-together': [
    'skewed-part',
    'turned-part',
    'swapped-axes',
    'seat-not-flat',
    'short-range',
    'off-centre-part',
    'stale-mapping',
    'uneven-reach',
  ],
  'drifting-rest': ['loose-return', 'two-rests', 'off-centre-part', 'stale-mapping'],
  'two-rests': ['loose-return', 'drifting-rest', 'off-centre-part', 'stale-mapping'],
  'slow-return': ['loose-return', 'noisy-joint', 'drifting-rest'],
  'odd-release': [],
  'unpushed-release': [],
  'uneven-reach': [],
  'hidden-rest': [],
  'several-surveys': [],
  'worn-track': ['noisy-joint', 'loose-return', 'overshoot', 'short-range', 'stale-mapping', 'seat-not-flat'],
  'noisy-joint': ['loose-return', 'overshoot'],
  'seat-not-flat': ['stale-mapping', 'short-range', 'clipped-sensor', 'uneven-reach'],
  'off-centre-part': ['stale-mapping', 'clipped-sensor', 'uneven-reach'],
  'clipped-sensor': ['short-range', 'stale-mapping', 'uneven-reach'],
  'short-range': ['stale-mapping', 'seat-not-flat', 'uneven-reach'],
  'turned-part': ['stale-mapping', 'uneven-reach'],
  'skewed-part': ['stale-mapping', 'turned-part', 'uneven-reach'],
  'loose-return': ['stale-mapping'],
  'stale-mapping': ['layers-disagree', 'uneven-reach'],
  overshoot: [],
  'layers-disagree': [],
  'inputs-fail': [],
  'disturbed-rest': [],
  'rest-not-measured': [],
  'rim-not-covered': [],
  'late-reports': [],
};

const ORDER: Readonly<Record<Decision, number>> = { fail: 0, 'cannot say': 1, pass: 2 };

/**
 * Failed ones first: a consequence after its cause, else by how many times the limit the value is; what does not allow a
 * statement (caution) before what merely could not be told; passes last. Findings of the whole pad count like those of a stick.
 */
export function rankFindings(findings: readonly Finding[]): Finding[] {
  return findings
    .map((finding) => ({ finding, caused: countCauses(finding, findings) }))
    .toSorted(
      (a, b) =>
        ORDER[a.finding.decision] - ORDER[b.finding.decision] ||
        Number(b.finding.severity !== 'note') - Number(a.finding.severity !== 'note') ||
        a.caused - b.caused ||
        timesLimit(b.finding) - timesLimit(a.finding),
    )
    .map(({ finding }) => finding);
}

/** Failed findings of the same stick that bring this one about. */
export function causesOf(finding: Finding, findings: readonly Finding[]): Finding[] {
  return findings.filter(
    (other) =>
      other.decision === 'fail' &&
      other.stick === finding.stick &&
      CONSEQUENCES[other.id].includes(finding.id) &&
      !(isRival(finding, other) && finding.severity === 'fault'),
  );
}

/** Two that explain the same outline: only where it is a caution is one the less likely of them. */
function isRival(one: Finding, other: Finding): boolean {
  return CONSEQUENCES[one.id].includes(other.id) && CONSEQUENCES[other.id].includes(one.id);
}

function countCauses(finding: Finding, findings: readonly Finding[]): number {
  return finding.decision === 'fail' ? causesOf(finding, findings).length : 0;
}

function timesLimit({ value, limit }: Finding): number {
  return value === null || limit === null || limit === 0 ? 0 : value / limit;
}
