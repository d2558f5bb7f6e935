/** Swapped axes and inverted axis: the stick went elsewhere than asked, and always in the same way. */
import type { Finding } from './finding.ts';
import type { Limit, Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { PromptedWays } from './prompted-ways.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

/** Mean cosine between where the stick went and where it should have gone by a wiring, at least. */
const AGREES = 0.8;

/** Measure: share of the prompts after which the stick went elsewhere by more than 45°. Null without prompts. */
export function findSwapped(subject: Subject, limits: Limits): Finding | null {
  const { prompted, stick } = subject;
  if (prompted === null) return null;
  const isSwapped = prompted.wiring.startsWith('swapped');
  const more = prompted.wiring === 'swapped' ? '' : ', and one or both run backwards';
  return findWiring(prompted, limits.astray, isSwapped, {
    id: 'swapped-axes',
    stick,
    fail: `Pushes of the ${stick} stick to a side come out up or down: its axes are swapped${more}.`,
    causes: ['The two signal wires are exchanged', 'The module is fitted turned by a quarter'],
  });
}

export function findInverted(subject: Subject, limits: Limits): Finding | null {
  const { prompted, stick } = subject;
  if (prompted === null) return null;
  const isInverted = prompted.wiring.endsWith('inverted') && !prompted.wiring.startsWith('swapped');
  const [axis] = prompted.wiring.split(' ');
  const which = axis === 'both' ? 'both axes run' : `its ${axis ?? ''} axis runs`;
  return findWiring(prompted, limits.astray, isInverted, {
    id: 'inverted-axis',
    stick,
    fail: `Pushes of the ${stick} stick come out on the other side: ${which} backwards.`,
    causes: [
      'The two ends of the track, or the supply of the sensor, are exchanged',
      'The magnet is fitted the wrong way round',
      'The module is fitted turned by half a turn',
    ],
  });
}

interface Words {
  readonly id: 'swapped-axes' | 'inverted-axis';
  readonly stick: Subject['stick'];
  readonly fail: string;
  readonly causes: readonly string[];
}

function findWiring(prompted: PromptedWays, limit: Limit, isThis: boolean, words: Words): Finding {
  const { prompts, astray, agreement } = prompted;
  const { id, stick, fail, causes } = words;
  const value = isThis || agreement < AGREES ? astray : 0;
  const sure = isThis && agreement >= AGREES;
  const what = id === 'swapped-axes' ? 'swapped' : 'inverted';
  return makeFinding({
    id,
    stick,
    value,
    // Of a share p of n prompts: 1.96·√(p(1 − p)/n), with p = 1/2 at worst.
    u95: 1.96 * Math.sqrt(0.25 / prompts),
    limit,
    severity: 'fault',
    ...(value > limit.value && !sure ? { decision: 'cannot say' as const } : {}),
    says: {
      fail,
      pass: `The ${stick} stick went where it was asked to go: its axes are not ${what}.`,
      'cannot say': `The ${stick} stick often went elsewhere than asked; whether its axes are ${what} cannot be told.`,
    },
    for: [
      `${percent(astray, 0)} of ${prompts} prompts came out elsewhere, ${prompted.wiring}, agreement ${agreement.toFixed(2)}.`,
    ],
    against: ['Whoever pushed may have mistaken the prompts, or held the pad turned.'],
    causes,
    next: 'Push once straight up and once to the right and watch the live rails; then look at the wires. Battery off before any soldering.',
    unsure: 'Push once straight up and once to the right and watch the live rails, then survey the stick once more.',
  });
}
