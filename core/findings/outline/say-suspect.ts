/** How sure a suspect is, in words. */
import { percent } from '../words.ts';
import type { GateSource } from './known-gate.ts';
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

/** Of a finding whose limit the gate's own waves hide. */
export const KNOW_THE_GATE =
  "Another survey would tell the gate's own waves from the part's: of an earlier sound part or a reference part in this shell, or of this part with the ring turned by 180°.";

/** What would look finer, where the gate hides more than the limit and nothing is known of it; null elsewhere. */
export function offerKnown(u95: number, limit: number, gateFrom: GateSource | null): string | null {
  return u95 <= limit || gateFrom !== null ? null : KNOW_THE_GATE;
}

const KNOWN_FROM: Readonly<Record<GateSource, string>> = {
  'earlier part': 'The waves of the gate are known from an earlier, sound part in this shell.',
  'reference part': 'The waves of the gate are known from a reference part in this shell.',
  'ring turned': 'The waves of the gate are told from those of this part by a survey with the ring turned by 180°.',
};

/** What was known of the gate; null where nothing was. */
export function sayKnown(gateFrom: GateSource | null): string | null {
  return gateFrom === null ? null : KNOWN_FROM[gateFrom];
}

function sayOdds(odds: number): string {
  return odds >= 10 ? String(Math.round(odds)) : odds.toFixed(1);
}
