/** The limits in the words of the screen, and how a hand writes one. */
import type { FindingId } from '../../core/findings/finding.ts';
import { LEAST_RELEASES } from '../../core/capture/evidence/least-releases.ts';
import { defaultLimits, type LimitId } from '../../core/findings/limits.ts';
import { WIDEST_GAP } from '../../core/proposal/solve.ts';
import { writtenIn } from '../kit/words/quantity-words.ts';

const WORDS: Readonly<Record<LimitId, string>> = {
  offCentre: 'part off centre',
  seat: 'seat not flat',
  turn: 'part turned',
  skew: 'axes not square',
  shortRange: 'short range',
  clipped: 'sensor clipped',
  wornTravel: 'worn track',
  noise: 'noise at rest',
  noiseTimes: 'noise of one axis',
  looseReturn: 'loose return',
  overshoot: 'overshoot',
  stale: 'stored numbers',
  layers: 'stored layers',
  bounce: 'bounce',
  dead: 'dead axis',
  astray: 'wiring of the axes',
  disturbed: 'disturbed rest',
  releases: 'releases, at least',
  uncovered: 'gap in the gate',
  late: 'late reports',
  losses: 'signal lost',
  slowReturn: 'slow return',
  together: 'axes together',
  drift: 'drifting rest',
  unevenReach: 'uneven reach',
  hiddenRest: 'rest hidden by the pad',
  otherPad: 'another pad',
};

export function limitName(id: LimitId): string {
  return WORDS[id];
}

/** The limit that a finding is held against; null where it has none of its own. */
export const LIMIT_OF: Readonly<Record<FindingId, LimitId | null>> = {
  'stale-mapping': 'stale',
  'off-centre-part': 'offCentre',
  'seat-not-flat': 'seat',
  'turned-part': 'turn',
  'skewed-part': 'skew',
  'short-range': 'shortRange',
  'clipped-sensor': 'clipped',
  'worn-track': 'wornTravel',
  'noisy-joint': 'noise',
  'dead-axis': 'dead',
  'swapped-axes': 'astray',
  'inverted-axis': 'astray',
  'loose-return': 'looseReturn',
  overshoot: 'overshoot',
  'layers-disagree': 'layers',
  'inputs-fail': 'bounce',
  'disturbed-rest': 'disturbed',
  'warming-up': null,
  'rest-not-measured': 'releases',
  'rim-not-covered': 'uncovered',
  'mapping-of-another-pad': 'otherPad',
  'late-reports': 'late',
  'signal-lost': 'losses',
  'slow-return': 'slowReturn',
  'axes-together': 'together',
  'drifting-rest': 'drift',
  'two-rests': 'looseReturn',
  'odd-release': null,
  'unpushed-release': null,
  'uneven-reach': 'unevenReach',
  'hidden-rest': 'hiddenRest',
  'several-surveys': null,
};

/** The number that a field holds: per cent for shares, without the sign. */
export function limitText(id: LimitId, value: number): string {
  return String(Math.round(value * writtenIn(defaultLimits[id].unit).times * 1e6) / 1e6);
}

/** What a hand wrote as the limit's value, or why it cannot be one. */
export function readLimit(id: LimitId, text: string): { readonly value: number } | { readonly problem: string } {
  const match = /^\s*(\d+(?:[.,]\d*)?|[.,]\d+)\s*(?:[%°×]|ms)?\s*$/u.exec(text);
  const number = match?.[1] === undefined ? Number.NaN : Number(match[1].replace(',', '.'));
  const { times, sign, of } = writtenIn(defaultLimits[id].unit);
  if (!Number.isFinite(number) || number <= 0)
    return {
      problem: `Write a number above 0${sign.trim() === '' ? '' : ` in ${sign.trim()}`}. The last good value stays.`,
    };
  if (times === 100 && number > 100) return { problem: 'Write 100 % at most. The last good value stays.' };
  if (of === 'releases' && (!Number.isInteger(number) || number < LEAST_RELEASES))
    return { problem: `Write a whole number from ${LEAST_RELEASES} on. The last good value stays.` };
  if (id === 'uncovered' && number > WIDEST_GAP)
    return { problem: `Write ${WIDEST_GAP}° at most. The last good value stays.` };
  return { value: number / times };
}
