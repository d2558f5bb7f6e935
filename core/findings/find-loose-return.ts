/** Loose return: the stick comes to rest now here, now there. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent, plusMinus } from './words.ts';

/**
 * Measure: s = √(σ_x² + σ_y²) of the rest points over the releases, in shares of the half travel. U = 1.96·s/√(4(n − 1)): the
 * standard error of a deviation with 2(n − 1) degrees of freedom, normal scatter taken for granted.
 */
export function findLooseReturn(subject: Subject, limits: Limits): Finding | null {
  const { report, stick, half, domain } = subject;
  const { rest } = report;
  if (rest === null || rest.covariance === null) return null;
  const { xx, yy } = rest.covariance;
  const value = Math.sqrt(xx / half.x ** 2 + yy / half.y ** 2);
  const scatter = value === 0 ? Math.hypot(rest.step.x / half.x, rest.step.y / half.y) / 2 : value;
  const u95 = rest.releases < limits.releases.value ? null : (1.96 * scatter) / Math.sqrt(4 * (rest.releases - 1));
  const isHidden = domain === 'reported' && value === 0;
  const says = `After ${rest.releases} releases the ${stick} stick's rests scatter by ${plusMinus(percent(value, 2), u95 === null ? null : percent(u95, 2))} of the half travel`;
  const { hysteresis } = rest;
  const side = (axis: 'x' | 'y'): number => Math.abs(hysteresis[axis] ?? 0) / half[axis];
  const sided = Math.max(side('x'), side('y'));
  return makeFinding({
    id: 'loose-return',
    stick,
    value,
    u95,
    limit: limits.looseReturn,
    severity: 'fault',
    ...(isHidden ? { decision: 'cannot say' as const } : {}),
    says: {
      fail: `${says}: it comes back loosely.`,
      pass: `${says}: it comes back well.`,
      'cannot say': isHidden
        ? `After ${rest.releases} releases the pad reports the ${stick} stick at one and the same count: how it really comes back is hidden by the pad, or finer than its counts.`
        : `${says}; whether that is too much cannot be told.`,
    },
    for: [
      sided > value
        ? `It stays on the side that it came from, ${percent(sided)} apart: friction holds it there.`
        : null,
      sided <= value && value > limits.looseReturn.value ? 'It stops on either side alike: play in the part.' : null,
    ],
    against: [
      report.warmUp?.steady === false ? 'The rest still drifts after soldering: wait and record it again.' : null,
    ],
    causes: [
      'A weak or worn spring',
      'Friction in the part: dirt, dried grease, a bent shaft',
      'The shell, cap or rubber touches the stick',
    ],
    next: 'Record the rest once more with the shell open; if it is better, free the stick; if not, replace the part.',
  });
}
