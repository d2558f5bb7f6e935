/** Drifting rest: from one release to the next the rest moves on, all in one way. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent, plusMinus, wayOf } from './words.ts';

/** A slope that is no more than this many times its own uncertainty is none. */
const SIGNIFICANT = 1.5;

/**
 * Measure: the way of the rest over the releases by its linear drift, in shares of the half travel: slope · the time
 * that the survey of the stick took. U is that of the slope times the same. Null with too few releases for a slope.
 */
export function findDriftingRest(
  { report, half, stick, surveyUs, restCaptures }: Subject,
  limits: Limits,
): Finding | null {
  const drift = report.rest?.drift ?? null;
  if (drift === null || surveyUs === null || (report.rest?.releases ?? 0) < limits.releases.value) return null;
  const seconds = surveyUs / 1e6;
  const x = (drift.x * seconds) / half.x;
  const y = (drift.y * seconds) / half.y;
  const value = Math.hypot(x, y);
  const u95 = Math.hypot((drift.u95.x * seconds) / half.x, (drift.u95.y * seconds) / half.y);
  const says = `Over the ${seconds.toFixed(0)} s of its survey the rest of the ${stick} stick moves by ${plusMinus(percent(value), percent(u95))} of the half travel ${wayOf(x, y)}`;
  return makeFinding({
    id: 'drifting-rest',
    stick,
    value,
    u95,
    limit: limits.drift,
    severity: 'caution',
    ...(value < SIGNIFICANT * u95 ? { decision: 'pass' as const } : {}),
    says: {
      fail: `${says}: what is measured of it does not hold for long.`,
      pass:
        value < SIGNIFICANT * u95
          ? `The rest of the ${stick} stick shows no drift over ${seconds.toFixed(0)} s beyond its own scatter.`
          : `${says}, too little to matter.`,
      'cannot say': `${says}; whether it goes on cannot be told.`,
    },
    for: [
      restCaptures > 1
        ? `The log holds ${restCaptures} rest captures, which are taken together here: judge them apart, if anything was done between them.`
        : null,
    ],
    against: [report.warmUp?.steady === false ? 'It was soldered shortly before: that wears off.' : null],
    causes: [
      'The part or its supply is still warming up',
      'A part that creeps into its seat, or a screw that was just tightened',
      'A sensor whose zero wanders with the supply',
    ],
    next: 'Wait some minutes and record the rest once more; if it still moves in one way, measure the supply of the part, then fit another one.',
  });
}
