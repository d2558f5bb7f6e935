/** The answer to "will this zone hide this rest, and at what cost?" in one sentence. */
import { percent } from '../../../core/plot/number-text.ts';
import type { ZoneAnswer } from '../../../core/zones/chain.ts';
import { directionText } from '../../selection/direction-words.ts';
import { largestOnset } from './largest-onset.ts';

export interface ZoneSentence {
  readonly verdict: 'hidden' | 'seen hidden' | 'leaks' | 'cannot say';
  /** The answer itself, e.g. `hides this rest`. */
  readonly answer: string;
  /** What it costs; empty where it cannot be stated. */
  readonly cost: string;
}

export function zoneSentence(zones: ZoneAnswer): ZoneSentence {
  const { leaks } = zones;
  if (leaks === null)
    return { verdict: 'cannot say', answer: 'cannot say without a rest capture: let the stick go 24 times', cost: '' };
  const bound = percent(leaks.upperBound95);
  if (leaks.leaking > 0)
    return {
      verdict: 'leaks',
      answer: `leaks in ${leaks.leaking} of ${leaks.releases} releases (at most ${bound} of all, 95 %), up to ${percent(leaks.largestOutput)} output`,
      cost: costOf(zones),
    };
  if (zones.hides === 'hidden')
    return {
      verdict: 'hidden',
      answer: `hides this rest: hidden, and the tolerance radius with it`,
      cost: costOf(zones),
    };
  return {
    verdict: 'seen hidden',
    answer: `hides what was seen: hidden in ${leaks.releases} of ${leaks.releases}, up to ${bound} of releases may still leak (95 %)`,
    cost: costOf(zones),
  };
}

function costOf(zones: ZoneAnswer): string {
  const most = largestOnset(zones.onset);
  if (most === null) return '';
  const never = zones.onset?.filter((one) => one.deflection === null).length ?? 0;
  const missing = never === 0 ? '' : `; no output before the gate in ${never} directions`;
  const uneven = zones.unevenness === null ? '' : `, uneven by ${percent(zones.unevenness)}`;
  return `onset ${percent(most.value)} at most, toward ${directionText(most.angle)}${uneven}${missing}`;
}
