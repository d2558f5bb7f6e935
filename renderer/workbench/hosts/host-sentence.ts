/** What two hosts make of one stick, in plain sentences. */
import { percent } from '../../../core/plot/number-text.ts';
import type { Standing } from '../../stick/standing.ts';
import { zoneSentence } from '../../stick/zone-sentence.ts';

/** E.g. `rests 2.1 % off the centre, least reach 0.950 at 55°; the zone: leaks in 3 of 24`. */
export function hostSentence({ rest, rim, zones }: Standing): string {
  const off = rest === null ? 'no rest was measured' : `rests ${percent(rest.offset.magnitude)} off the centre`;
  const least = rim?.leastReach ?? null;
  const reach =
    least === null ? 'no gate was measured' : `least reach ${least.value.toFixed(3)} at ${String(least.angle)}°`;
  return `${off}, ${reach}; the zone: ${zoneSentence(zones).answer}`;
}

/** Where both hold the same numbers nothing of what they see can differ. */
export function sameSentence(first: Standing, second: Standing): string | null {
  const isSame = (['x', 'y'] as const).every((axis) =>
    (['min', 'centre', 'max'] as const).every((edge) => first.mapping[axis][edge] === second.mapping[axis][edge]),
  );
  return isSame ? 'Both read the same six numbers: they see the same.' : null;
}
