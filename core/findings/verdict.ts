/** What to do with a stick, in one word, with one sentence why. */
import { causesOf } from './rank-findings.ts';
import { findingIds, type Finding, type FindingId, type Verdict } from './finding.ts';

export interface VerdictWhy {
  readonly verdict: Verdict;
  readonly why: string;
}

/** What a failed finding asks for: a verdict, or nothing, which is said and not left out. */
type Ask = Exclude<Verdict, 'keep' | 'not surveyed'> | 'decides nothing';

interface Part {
  readonly asks: Ask;
  /** Must have been judged, and pass, before a stick may be kept. */
  readonly needed: boolean;
}

const asks = (verdict: Ask): Part => ({ asks: verdict, needed: false });
const needed = (verdict: Ask): Part => ({ asks: verdict, needed: true });

/**
 * The part that every finding has in the verdict: a new one does not compile without. Not needed is the noise: where the step
 * of the counts hides it from the measure, it hides it from every host. What the log is too thin for is asked below.
 */
const PARTS: Readonly<Record<FindingId, Part>> = {
  'dead-axis': asks('reseat'),
  'swapped-axes': asks('reseat'),
  'inverted-axis': asks('reseat'),
  'worn-track': asks('replace'),
  'noisy-joint': asks('reseat'),
  'seat-not-flat': needed('reseat'),
  'turned-part': asks('reseat'),
  'skewed-part': needed('replace'),
  'short-range': needed('reseat'),
  'clipped-sensor': asks('replace'),
  'loose-return': needed('replace'),
  overshoot: asks('replace'),
  'disturbed-rest': asks('reseat'),
  'off-centre-part': needed('recalibrate'),
  'stale-mapping': asks('recalibrate'),
  'layers-disagree': asks('recalibrate'),
  'mapping-of-another-pad': asks('undecided'),
  'warming-up': asks('undecided'),
  'rest-not-measured': asks('decides nothing'),
  'rim-not-covered': asks('decides nothing'),
  // Of the whole pad, not of a stick.
  'inputs-fail': asks('decides nothing'),
  'late-reports': asks('decides nothing'),
};

const NEEDED = findingIds.filter((id) => PARTS[id].needed);

/**
 * From the ranked findings of one stick. What failed and is not the consequence of something else decides, in order of rank;
 * without any, missing evidence makes it `undecided`, never `keep`. A fault that stands whatever is missing decides all the same.
 */
export function verdictOf(findings: readonly Finding[]): VerdictWhy {
  const failed = findings.filter(
    (one) => one.decision === 'fail' && askOf(one) !== 'decides nothing' && causesOf(one, findings).length === 0,
  );
  const waits = failed.find((one) => askOf(one) === 'undecided');
  if (waits !== undefined) return { verdict: 'undecided', why: waits.says };
  const worst = failed.find((one) => one.severity === 'fault') ?? failed[0];
  const missing = findings.find((one) => one.id === 'rest-not-measured' || one.id === 'rim-not-covered');
  const ask = worst === undefined ? 'decides nothing' : askOf(worst);
  if (worst !== undefined && ask !== 'decides nothing' && (worst.severity === 'fault' || missing === undefined))
    return { verdict: ask, why: worst.says };
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

function askOf({ id }: Finding): Ask {
  return PARTS[id].asks;
}
