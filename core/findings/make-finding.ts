/** Puts a finding together: the decision falls by the guard bands, what is said follows from it. */
import type { StickId } from '../pad/stick.ts';
import { decide } from './decide.ts';
import type { Decision, Finding, FindingId, FindingShows, Severity } from './finding.ts';
import type { Limit } from './limits.ts';

export interface Judged {
  readonly id: FindingId;
  readonly stick: StickId | null;
  readonly value: number | null;
  readonly u95: number | null;
  readonly limit: Limit;
  /** How bad it is where it fails; anything else is a note. */
  readonly severity: Exclude<Severity, 'note'>;
  /** Taken where the guard bands are not asked, e.g. because something is missing. */
  readonly decision?: Decision;
  /** Whether all that it is told by was covered: what would fail cannot be said where it was not. */
  readonly whole?: boolean;
  /** One sentence for each decision, the measure with its number in it. */
  readonly says: Readonly<Record<Decision, string>>;
  readonly for?: readonly (string | null)[];
  readonly against?: readonly (string | null)[];
  readonly causes?: readonly string[];
  readonly next: string;
  /** The next step where it cannot be said: never heat or a new part. Another survey where left out. */
  readonly unsure?: string;
  readonly shows?: Partial<FindingShows>;
}

const SURVEY_AGAIN = 'Survey the stick once more; until it can be told, leave the part as it is.';

export function makeFinding(judged: Judged): Finding {
  const { limit } = judged;
  const value = finiteOrNull(judged.value);
  const u95 = finiteOrNull(judged.u95);
  const decided = judged.decision ?? decide(value, u95, limit.value);
  const decision = decided === 'fail' && judged.whole === false ? 'cannot say' : decided;
  const failed = decision === 'fail';
  return {
    id: judged.id,
    severity: failed ? judged.severity : 'note',
    stick: judged.stick,
    value,
    u95,
    unit: limit.unit,
    limit: limit.value,
    limitFrom: limit.from,
    decision,
    says: judged.says[decision],
    for: withoutNull(judged.for),
    against: withoutNull(judged.against),
    causes: failed ? (judged.causes ?? []) : [],
    next: { pass: 'Nothing to do.', fail: judged.next, 'cannot say': judged.unsure ?? SURVEY_AGAIN }[decision],
    shows: { directions: [], spans: [], counts: [], ...judged.shows },
  };
}

function finiteOrNull(value: number | null): number | null {
  return value === null || !Number.isFinite(value) ? null : value;
}

function withoutNull(lines: readonly (string | null)[] = []): string[] {
  return lines.filter((line) => line !== null);
}
