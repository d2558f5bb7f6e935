/** Warming up: the rest still drifts after soldering, so nothing said of it holds yet. */
import type { WarmUpMeasure } from '../measure/warm-up-measure.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

/** Drift is given as what it comes to in this time. */
const SECONDS = 60;

/** Measure: the way of the rest in a minute by its drift over the last stretch, in shares of the half travel. */
export function findWarmingUp({ report, stick, half }: Subject, limits: Limits): Finding | null {
  const { warmUp } = report;
  if (warmUp === null) return null;
  const drift = warmUp.last ?? warmUp.drift;
  const perMinute = (of: { readonly x: number; readonly y: number }): number =>
    SECONDS * Math.hypot(of.x / half.x, of.y / half.y);
  const value = perMinute(drift);
  const says = `The rest of the ${stick} stick moves by ${percent(value, 2)} of the half travel in a minute`;
  const found = makeFinding({
    id: 'warming-up',
    stick,
    value,
    u95: perMinute(drift.u95),
    limit: { ...limits.disturbed, unit: 'share of the half travel in a minute' },
    severity: 'caution',
    decision: decisionOf(warmUp),
    says: {
      fail: `${says}: it is still warm from soldering, so wait.`,
      pass: `${says}, which is not significant: it has cooled.`,
      'cannot say': `${says}; ${warmUp.dwells} dwells are too few to tell whether it has cooled.`,
    },
    for: [`Seen over ${warmUp.dwells} dwells in ${Math.round(warmUp.seconds)} s.`],
    causes: ['Heat from soldering', 'A part that creeps into its seat'],
    next: 'Wait some minutes and record it again; calibrate only when it is steady.',
    unsure: 'Wait some minutes and record it again; calibrate only when it is steady.',
  });
  // Whether the drift is significant decides, no limit does.
  return { ...found, limit: null };
}

function decisionOf({ steady }: WarmUpMeasure): 'pass' | 'fail' | 'cannot say' {
  if (steady === null) return 'cannot say';
  return steady ? 'pass' : 'fail';
}
