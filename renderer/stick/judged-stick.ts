/** What a report says of each stick, in the order in which a bench reads it. */
import type { Finding, Verdict } from '../../core/findings/finding.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';
import type { Reply } from '../../shared/contract.ts';
import { findingKey, findingsOf } from './finding-key.ts';

export type Report = Reply<'surveys.open'>['report'];

export interface KeyedFinding {
  readonly key: string;
  readonly finding: Finding;
}

export interface JudgedStick {
  readonly stick: StickId;
  readonly verdict: Verdict;
  /** Why, in one sentence. */
  readonly reason: string;
  readonly failed: readonly KeyedFinding[];
  readonly unsure: readonly KeyedFinding[];
  readonly held: readonly KeyedFinding[];
  /** What was not captured or puts the captures in doubt, one sentence each. */
  readonly missing: readonly string[];
}

export function judgedSticks(report: Report): JudgedStick[] {
  return STICKS.flatMap((stick) => {
    const verdict = report.verdict[stick];
    if (verdict === undefined) return [];
    const list = findingsOf(report.findings, stick);
    const keyed = list.map((finding, index) => ({ key: findingKey(list, index), finding }));
    const of = (decision: Finding['decision']): KeyedFinding[] =>
      keyed.filter(({ finding }) => finding.decision === decision);
    const parts = { failed: of('fail'), unsure: of('cannot say'), held: of('pass') };
    const missing = (report.sticks[stick]?.lacks ?? []).map(({ says }) => says);
    return [{ stick, verdict, reason: report.verdictWhy[stick] ?? '', ...parts, missing }];
  });
}

/** What the left column says beside the view's name, e.g. `2 faults` or `all hold`. */
export function judgedInBrief(report: Report): string {
  const failed = report.findings.filter(({ decision }) => decision === 'fail');
  for (const severity of ['fault', 'caution', 'note'] as const) {
    const count = failed.filter((finding) => finding.severity === severity).length;
    if (count > 0) return counted(count, severity, `${severity}s`);
  }
  for (const open of ['undecided', 'not surveyed'] as const)
    if (Object.values(report.verdict).includes(open)) return open;
  return report.findings.length === 0 ? 'nothing judged' : 'all hold';
}

export function counted(count: number, one: string, many: string): string {
  return `${String(count)} ${count === 1 ? one : many}`;
}
