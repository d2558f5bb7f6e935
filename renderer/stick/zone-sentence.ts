/** The answer to "will this zone hide this rest, and at what cost?" in one sentence. */
import { percent } from '../../core/plot/number-text.ts';
import type { ZoneAnswer } from '../../core/zones/chain.ts';
import { largestOnset } from './largest-onset.ts';

export interface ZoneSentence {
  readonly verdict: 'hidden' | 'seen hidden' | 'leaks' | 'cannot say';
  /** The answer itself, e.g. `hidden in 24 of 24 seen`. */
  readonly answer: string;
  /** What it costs; empty where it cannot be stated. */
  readonly cost: string;
}

export function zoneSentence(zones: ZoneAnswer): ZoneSentence {
  const { leaks } = zones;
  if (leaks === null)
    return { verdict: 'cannot say', answer: 'cannot say without a rest capture: let the stick go 24 times', cost: '' };
  const cost = costOf(zones);
  if (leaks.leaking > 0)
    return {
      verdict: 'leaks',
      answer: `leaks in ${leaks.leaking} of ${leaks.releases}, up to ${percent(leaks.largestOutput)} out`,
      cost,
    };
  if (zones.hides === 'hidden') return { verdict: 'hidden', answer: 'hidden', cost };
  return { verdict: 'seen hidden', answer: `hidden in ${leaks.releases} of ${leaks.releases} seen`, cost };
}

function costOf(zones: ZoneAnswer): string {
  const most = largestOnset(zones.onset);
  if (most === null) return 'no output before the gate in any direction';
  const never = zones.onset?.filter((one) => one.deflection === null).length ?? 0;
  const missing = never === 0 ? '' : `, none before the gate in ${never} directions`;
  const uneven = zones.unevenness === null ? '' : `, uneven ${percent(zones.unevenness)}`;
  return `onset to ${percent(most.value)} at ${most.angle}°${uneven}${missing}`;
}
