/** What to do with a stick, in one word, with one sentence why. */
import { causesOf } from './rank-findings.ts';
import type { Domain } from '../pad/stick.ts';
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
  'signal-lost': asks('reseat'),
  'slow-return': asks('replace'),
  'axes-together': asks('reseat'),
  'drifting-rest': asks('undecided'),
  'two-rests': asks('replace'),
  'odd-release': asks('decides nothing'),
  'unpushed-release': asks('decides nothing'),
  'uneven-reach': asks('recalibrate'),
  'hidden-rest': asks('decides nothing'),
  'rest-not-measured': asks('decides nothing'),
  'rim-not-covered': asks('decides nothing'),
  'several-surveys': asks('decides nothing'),
  // Of the whole pad, not of a stick.
  'inputs-fail': asks('decides nothing'),
  'late-reports': asks('decides nothing'),
};

const NEEDED = findingIds.filter((id) => PARTS[id].needed);

/**
 * From the ranked findings of one stick. What failed and is not the consequence of something else decides, in order of rank;
 * without any, missing evidence makes it `undecided`, never `keep`. A fault that stands whatever is missing decides all the same.
 * A stick is kept where every needed finding passes, or where it lies within its limit by its value and only the uncertainty
 * reaches beyond: simple acceptance (JCGM 106:2012, 8.2), with the uncertainty said.
 */
export function verdictOf(findings: readonly Finding[], domain: Domain = 'sensor'): VerdictWhy {
  const { verdict, why } = judge(findings, domain);
  const several = findings.find((one) => one.id === 'several-surveys' && one.decision === 'fail');
  return { verdict, why: several === undefined ? why : `${why} ${several.says}` };
}

function judge(findings: readonly Finding[], domain: Domain): VerdictWhy {
  const failed = findings.filter(
    (one) => one.decision === 'fail' && askOf(one) !== 'decides nothing' && causesOf(one, findings).length === 0,
  );
  const waits = failed.find((one) => askOf(one) === 'undecided');
  if (waits !== undefined) return { verdict: 'undecided', why: waits.says };
  const takenUp = failed.find((one) => isTakenUp(one, findings));
  const deciding = failed.filter((one) => one !== takenUp);
  const missing = findings.find((one) => one.id === 'rest-not-measured' || one.id === 'rim-not-covered');
  const stands = (one: Finding): boolean => one.severity === 'fault';
  const worst = deciding.find(stands) ?? deciding[0];
  const ask = worst === undefined ? 'decides nothing' : askOf(worst);
  if (worst !== undefined && ask !== 'decides nothing' && (stands(worst) || missing === undefined))
    return { verdict: ask, why: worst.says };
  if (missing !== undefined)
    return { verdict: 'undecided', why: worst === undefined ? missing.says : `${worst.says} ${missing.says}` };
  const hidden = domain === 'reported' ? HIDDEN_BY_PAD.filter((id) => !findings.some((one) => one.id === id)) : [];
  const open = NEEDED.filter(
    (id) => !isAccepted(findings.find((one) => one.id === id)) && takenUp?.id !== id && !hidden.includes(id),
  );
  const told = findings.find((one) => open.includes(one.id));
  if (told !== undefined) return { verdict: 'undecided', why: told.says };
  if (open.length > 0)
    return {
      verdict: 'undecided',
      why: `Nothing in this log says whether it has ${open.map((id) => id.replaceAll('-', ' ')).join(', ')}; record rest and rim.`,
    };
  return {
    verdict: 'keep',
    why: [sayKept(takenUp), sayHidden(hidden), sayUnresolved(findings)].filter((one) => one !== '').join(' '),
  };
}

/** Told by the outline of the gate, which a pad cuts off where it reports no more than full output. */
const HIDDEN_BY_PAD: readonly FindingId[] = ['seat-not-flat', 'skewed-part', 'short-range'];

function sayHidden(hidden: readonly FindingId[]): string {
  if (hidden.length === 0) return '';
  const names = hidden.map((id) => id.replaceAll('-', ' ')).join(', ');
  return `The pad reports no more than full output, so that nothing can be told of: ${names}.`;
}

/** A part that reads off its middle is no reason to write again where the numbers that are stored fit it. */
function isTakenUp({ id }: Finding, findings: readonly Finding[]): boolean {
  return id === 'off-centre-part' && findings.some((one) => one.id === 'stale-mapping' && one.decision === 'pass');
}

function isAccepted(finding: Finding | undefined): boolean {
  return finding !== undefined && (finding.decision === 'pass' || isWithin(finding));
}

/** Within its limit by its value, while its uncertainty reaches beyond. */
function isWithin({ decision, value, u95, limit }: Finding): boolean {
  return decision === 'cannot say' && value !== null && u95 !== null && limit !== null && value <= limit;
}

function sayKept(takenUp: Finding | undefined): string {
  return takenUp === undefined
    ? 'Everything that was measured stays within its limits.'
    : `${takenUp.says.replace(/\.$/, '')}, and the stored numbers take that up.`;
}

/** How fine the survey could look where that is coarser than the limit. */
function sayUnresolved(findings: readonly Finding[]): string {
  const within = findings.filter((one) => PARTS[one.id].needed && isWithin(one));
  if (within.length === 0) return '';
  const each = within.map((one) => `${one.id.replaceAll('-', ' ')} ± ${sayU95(one)}`);
  return `Finer than this cannot be told: ${each.join(', ')}.`;
}

function sayU95({ u95, unit }: Finding): string {
  const value = u95 ?? Number.NaN;
  return unit === 'degrees' ? `${value.toFixed(1)}°` : `${(100 * value).toFixed(1)} %`;
}

function askOf({ id }: Finding): Ask {
  return PARTS[id].asks;
}
