/** Overshoot: let go from full tilt, the stick swings past its rest. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

/**
 * Measure: the largest overshoot of the flicks, a deflection. U: what the flicks differ by, (largest − mean), and the restlessness
 * of the reading; the peak between two reports is left aside, as it would only be higher.
 */
export function findOvershoot(subject: Subject, limits: Limits): Finding | null {
  const { report, stick, half } = subject;
  const { flick, rest } = report;
  if (flick === null || flick.count === 0) return null;
  const { largest, mean } = flick.overshoot;
  const noise = Math.max((rest?.noise?.x ?? 0) / half.x, (rest?.noise?.y ?? 0) / half.y);
  const says = `Let go from full tilt, the ${stick} stick swings ${percent(largest)} past its rest (mean of ${flick.count}: ${percent(mean)})`;
  const zone = percent(limits.overshoot.value);
  const startsUs = flick.at;
  return makeFinding({
    id: 'overshoot',
    stick,
    value: largest,
    u95: Math.hypot(largest - mean, 2 * noise),
    limit: limits.overshoot,
    severity: 'fault',
    says: {
      fail: `${says}: behind a zone of ${zone} a host sees a push the other way.`,
      pass: `${says}, which a zone of ${zone} hides.`,
      'cannot say': `${says}; whether a zone of ${zone} hides that cannot be told.`,
    },
    for: [`It takes up to ${Math.round(flick.settlingUs.max / 1000)} ms until it stays at its rest.`],
    against: ['A flick in which the thumb brushed the stick on the way back looks the same.'],
    causes: [
      'A hard spring with too little damping: dry joints of the gimbal',
      'A heavy cap on the stick',
      'A magnet that is loose on its shaft',
    ],
    next: 'Try it without the cap; a zone wider than the overshoot hides it; else fit another part.',
    shows: { spans: startsUs.map((startUs) => ({ startUs, endUs: startUs + 200_000 })) },
  });
}
