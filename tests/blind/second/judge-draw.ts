/** One draw: a pad is made, surveyed by the second hand and judged by the program as any log would be. */
import { TrackBuilder } from '../../../core/capture/evidence/build-track.ts';
import { judgeTrack } from '../../../core/findings/judge-track.ts';
import { drawUnit, type Wish } from './draw-unit.ts';
import { writeLog } from './write-log.ts';
import { takeSurvey } from './survey.ts';
import { truthOf, type Truth } from './truth.ts';

/** What the program made of it. */
export interface Judged {
  readonly wish: Wish;
  /** How the pad was drawn: bits, rate, loss, marks. */
  readonly drawn: string;
  /** What is so of the surveyed part. */
  readonly truth: Truth;
  readonly verdict: string;
  readonly why: string;
  /** Failed findings of the left stick and the pad, the first named first. */
  readonly failed: readonly string[];
  readonly cannotSay: readonly string[];
  readonly millis: number;
}

/** `folder`: where the log is written for a look, or null. */
export function judgeDraw(wish: Wish, folder: string | null): Judged {
  const from = performance.now();
  const unit = drawUnit(wish);
  const builder = new TrackBuilder();
  takeSurvey(unit, builder);
  if (folder !== null) writeLog(unit, folder, nameOf(wish));
  const track = builder.finish();
  if (!track.ok) throw new Error(track.problem.says);
  const { findings, verdict, verdictWhy } = judgeTrack(track.value, null);
  const own = findings.filter(({ stick }) => stick !== 'right');
  const { plan, style, parts } = unit;
  const loss = plan.loss === null ? '' : ` loses ${plan.loss.run} in ${plan.loss.once}${plan.loss.told ? ' told' : ''}`;
  return {
    wish,
    drawn: `${parts.left.gate.shape} ${parts.left.geometry} ${plan.rateHz} Hz${plan.onChange ? ' on change' : ''}${loss}, ${style.marks}${style.early ? ' early' : ''}`,
    truth: truthOf(parts.left),
    verdict: verdict.left ?? 'none',
    why: verdictWhy.left ?? '',
    failed: own.filter(({ decision }) => decision === 'fail').map(({ id }) => id),
    cannotSay: own.filter(({ decision }) => decision === 'cannot say').map(({ id }) => id),
    millis: Math.round(performance.now() - from),
  };
}

function nameOf({ seed, pad, fault, slip }: Wish): string {
  return [pad, fault === null ? (slip ?? 'sound') : `${fault.name}-${fault.size}`, seed].join('_');
}
