/** Hidden rest: the pad itself takes the middle away, so that nothing can be said of the rest within. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent, plusMinus } from './words.ts';

/**
 * Measure: half the width of what a pad answers with one count about its middle, in shares of the half travel (see `middleBand`). Only
 * where counts come after the pad's own mapping. A caution: it is the pad's doing, and hides what it hides.
 */
export function findHiddenRest({ middleBand, stick }: Subject, limits: Limits): Finding | null {
  if (middleBand === null) return null;
  const { width, u95, axis } = middleBand;
  const says = `Within ${plusMinus(percent(width), percent(u95))} of the half travel about its middle the pad reports the ${stick} stick's ${axis} as one and the same count`;
  return makeFinding({
    id: 'hidden-rest',
    stick,
    value: width,
    u95,
    limit: limits.hiddenRest,
    severity: 'caution',
    says: {
      fail: `${says}: how the stick rests within cannot be told.`,
      pass: `The pad hides nothing about the middle of the ${stick} stick beyond a step of its counts.`,
      'cannot say': `${says}; whether it hides the rest cannot be told.`,
    },
    for: ['In slow sweeps through the middle the counts stand still there, and go on beyond.'],
    against: ['A stick that hangs in the middle of a sweep looks the same.'],
    causes: ['A dead zone in the firmware of the pad'],
    next: 'Nothing to mend: to see the rest itself, use a mode of the pad that reports sensor counts, if it has one.',
    unsure: 'Sweep slowly through the middle a few times more.',
  });
}
