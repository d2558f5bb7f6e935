/** Axes together: each axis follows the other one far more than a slanted part makes it. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent, plusMinus } from './words.ts';

/** What moulded gates and hands make of it, as a share: an expanded uncertainty. */
const SHAPE = 0.02;

/**
 * Measure: the share k of each axis that appears on the other. Of a round gate with x + k·y and y + k·x the readings have the correlation
 * r = 2k/(1 + k²), so that k = (1 − √(1 − r²))/r. From the readings of the rim, each direction counted alike. Null without.
 */
export function findAxesTogether({ together, stick }: Subject, limits: Limits): Finding | null {
  if (together === null) return null;
  const value = Math.abs(together);
  const says = `Each axis of the ${stick} stick carries ${plusMinus(percent(value), percent(SHAPE))} of the other one`;
  return makeFinding({
    id: 'axes-together',
    stick,
    value,
    u95: SHAPE,
    limit: limits.together,
    severity: 'fault',
    says: {
      fail: `${says}: the two move together.`,
      pass: `${says}, no more than a part that stands a little slanted makes it.`,
      'cannot say': `${says}; whether that is more than a slanted part makes cannot be told.`,
    },
    for: [
      together > 0 ? 'The gate comes out drawn toward 45° and 225°.' : 'The gate comes out drawn toward 135° and 315°.',
    ],
    against: ['A sensor that is turned far on its pins looks the same.'],
    causes: [
      'Both axes share a ground or supply lead with too much resistance: a cracked joint, a torn trace',
      'Flux or moisture between the two signal pins',
      'A sensor that is turned on its pins',
    ],
    next: 'Take the battery off; measure the ground and supply pins of the part against those of the chip, and go over their joints. Mind the hot iron.',
    shows: { directions: together > 0 ? [45, 225] : [135, 315] },
  });
}
