/** One draw: a pad is made, surveyed by the second hand and judged by the program as any log would be. */
import { TrackBuilder } from '../../../core/capture/evidence/build-track.ts';
import { judgeTrack } from '../../../core/findings/judge-track.ts';
import { isBorneOut } from './borne-out.ts';
import { drawUnit, type Wish } from './draw-unit.ts';
import type { GateShape } from './gate.ts';
import { writeLog } from './write-log.ts';
import { takeSurvey } from './survey.ts';
import { truthOf, type Truth } from './truth.ts';

export interface Draw {
  readonly wish: Wish;
  /** Where its log is written for a look, or null. */
  readonly folder: string | null;
}

/** What the program made of it. */
export interface Judged {
  readonly wish: Wish;
  /** How the pad was drawn: bits, rate, loss, marks. */
  readonly drawn: string;
  readonly gate: GateShape;
  /** What is so of the surveyed part. */
  readonly truth: Truth;
  readonly verdict: string;
  readonly why: string;
  /** Failed findings of the left stick and the pad, the first named first. */
  readonly failed: readonly string[];
  /** Those of them that the numbers of a part without a fault do not bear out; told of sound draws alone. */
  readonly notSo: readonly string[];
  readonly cannotSay: readonly string[];
  /** What the log lacks of the left stick, by its code. */
  readonly lacks: readonly string[];
  readonly millis: number;
}

export function judgeDraw({ wish, folder }: Draw): Judged {
  const from = performance.now();
  const unit = drawUnit(wish);
  const builder = new TrackBuilder();
  takeSurvey(unit, builder);
  if (folder !== null) writeLog(unit, folder, nameOf(wish));
  const track = builder.finish();
  if (!track.ok) throw new Error(track.problem.says);
  const { sticks, findings, verdict, verdictWhy } = judgeTrack(track.value, null);
  const own = findings.filter(({ stick }) => stick !== 'right');
  const failed = own.filter(({ decision }) => decision === 'fail').map(({ id }) => id);
  const { plan, style, parts } = unit;
  const loss = plan.loss === null ? '' : ` loses ${plan.loss.run} in ${plan.loss.once}${plan.loss.told ? ' told' : ''}`;
  return {
    wish,
    drawn: `${parts.left.gate.shape} ${parts.left.geometry} ${plan.rateHz} Hz${plan.onChange ? ' on change' : ''}${loss}, ${style.marks}${style.early ? ' early' : ''}`,
    gate: parts.left.gate.shape,
    truth: truthOf(parts.left),
    verdict: verdict.left ?? 'none',
    why: verdictWhy.left ?? '',
    failed,
    notSo: isSound(wish) ? failed.filter((id) => !isBorneOut(id, unit)) : [],
    cannotSay: own.filter(({ decision }) => decision === 'cannot say').map(({ id }) => id),
    lacks: sticks.left?.lacks.map(({ code }) => code) ?? [],
    millis: Math.round(performance.now() - from),
  };
}

export function isSound({ faults, slip }: Wish): boolean {
  return faults.length === 0 && slip === null;
}

function nameOf({ seed, pad, faults, slip }: Wish): string {
  const wrong = faults.length === 0 ? [slip ?? 'sound'] : faults.map(({ name, size }) => `${name}-${size}`);
  return [pad, ...wrong, seed].join('_');
}
