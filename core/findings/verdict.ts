/** What to do with a stick, in one word, with one sentence why. */
import { causesOf } from './rank-findings.ts';
import type { Finding, FindingId, Verdict } from './finding.ts';

export interface VerdictWhy {
  readonly verdict: Verdict;
  readonly why: string;
}

/** What each failed finding asks for. */
const ASKS: Readonly<Partial<Record<FindingId, Verdict>>> = {
  'dead-axis': 'reseat',
  'swapped-axes': 'reseat',
  'inverted-axis': 'reseat',
  'worn-track': 'replace',
  'noisy-joint': 'reseat',
  'seat-not-flat': 'reseat',
  'turned-part': 'reseat',
  'skewed-part': 'replace',
  'short-range': 'reseat',
  'clipped-sensor': 'replace',
  'loose-return': 'replace',
  overshoot: 'replace',
  'disturbed-rest': 'reseat',
  'off-centre-part': 'recalibrate',
  'stale-mapping': 'recalibrate',
  'layers-disagree': 'recalibrate',
  'mapping-of-another-pad': 'undecided',
  'warming-up': 'undecided',
};

/**
 * What must have been judged before a stick may be kept. Not the noise: where the step of the counts hides it from the
 * measure, it hides it from every host.
 */
const NEEDED: readonly FindingId[] = ['off-centre-part', 'seat-not-flat', 'short-range', 'skewed-part', 'loose-return'];

/**
 * From the ranked findings of one stick. What failed and is not the consequence of something else decides, in order of rank;
 * without any, missing evidence makes it `undecided`, never `keep`. A fault that stands whatever is missing decides all the same.
 */
export function verdictOf(findings: readonly Finding[]): VerdictWhy {
  const failed = findings.filter(
    (one) => one.decision === 'fail' && ASKS[one.id] !== undefined && causesOf(one, findings).length === 0,
  );
  const waits = failed.find((one) => ASKS[one.id] === 'undecided');
  if (waits !== undefined) return { verdict: 'undecided', why: waits.says };
  const worst = failed.find((one) => one.severity === 'fault') ?? failed[0];
  const missing = findings.find((one) => one.id === 'rest-not-measured' || one.id === 'rim-not-covered');
  if (worst !== undefined && (worst.severity === 'fault' || missing === undefined))
    return { verdict: ASKS[worst.id] ?? 'undecided', why: worst.says };
  if (missing !== undefined) return { verdict: 'undecided', why: missing.says };
  const open = NEEDED.filter((id) => findings.find((one) => one.id === id)?.decision !== 'pass');
  const told = findings.find((one) => open.includes(one.id));
  if (told !== undefined) return { verdict: 'undecided', why: told.says };
  if (open.length > 0)
    return {
      verdict: 'undecided',
      why: `Nothing in this log says whether it has ${open.map((id) => id.replaceAll('-', ' ')).join(', ')}; record rest and rim.`,
    };
  return { verdict: 'keep', why: 'Everything that was measured stays within its limits.' };
}
