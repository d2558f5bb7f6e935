/** How sure a suspect is, in words. */
import { percent } from '../words.ts';
import type { Suspect } from './seat-or-side.ts';
import type { Suspected } from './suspects.ts';

const NAMES: Readonly<Record<Suspect, string>> = {
  seat: 'a seat that is not flat',
  x: 'a short side of x',
  y: 'a short side of y',
};
/** The rest of a sentence; empty without a rival. */
export function sayRival(rival: Suspected['rival']): string {
  if (rival === null) return '';
  const { is, odds } = rival;
  const against =
    odds >= 1 ? `${sayOdds(odds)} to 1 against ${NAMES[is]}` : `1 to ${sayOdds(1 / odds)} against ${NAMES[is]}`;
  return `, with odds of ${against}, which looks much the same`;
}

/** Says how fine a survey could look where that is coarser than the limit; empty where it is not. */
export function coarserThan(u95: number, limit: number): string {
  return u95 <= limit ? '' : `; finer than ${percent(u95)} the gate hides`;
}

function sayOdds(odds: number): string {
  return odds >= 10 ? String(Math.round(odds)) : odds.toFixed(1);
}
