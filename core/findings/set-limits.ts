/** Puts values of limits in the place of the program's own; what no limit can be is refused by name. */
import { LEAST_RELEASES } from '../capture/evidence/least-releases.ts';
import { WIDEST_GAP } from '../proposal/solve.ts';
import { defaultLimits, limitIds, type Limit, type LimitId, type Limits, type LimitSetBy } from './limits.ts';

export interface LimitsSet {
  readonly limits: Limits;
  /** One sentence for each value that cannot be used; the limit stays as it was. */
  readonly refused: readonly string[];
}

const SOURCES: Readonly<Record<Exclude<LimitSetBy, 'default'>, string>> = {
  settings: 'Set on this bench.',
  file: 'Given by a limits file.',
};

/** `values` by the limit's id, of any shape; their units are those of the limits. */
export function setLimits(
  base: Limits,
  values: Readonly<Record<string, unknown>>,
  setBy: Exclude<LimitSetBy, 'default'>,
): LimitsSet {
  const limits: Record<LimitId, Limit> = { ...base };
  const refused: string[] = [];
  for (const [id, value] of Object.entries(values)) {
    const wrong = refuseLimit(id, value);
    if (wrong !== null) refused.push(wrong);
    else {
      const usual = defaultLimits[id as LimitId];
      const own = { ...usual, value: value as number, setBy };
      limits[id as LimitId] = value === usual.value ? own : { ...own, from: 'workshop', source: SOURCES[setBy] };
    }
  }
  return { limits, refused };
}

/** Why a value cannot be that limit's, in one sentence; null where it can. */
export function refuseLimit(id: string, value: unknown): string | null {
  if (!isLimitId(id)) return `There is no limit "${id}"; the limits are ${limitIds.join(', ')}.`;
  if (typeof value !== 'number' || !Number.isFinite(value))
    return `The limit ${id} is no number; give one above 0, in ${defaultLimits[id].unit}.`;
  if (value <= 0) return `The limit ${id} is ${value}; give a number above 0, in ${defaultLimits[id].unit}.`;
  if (defaultLimits[id].unit.startsWith('share') && value > 1)
    return `The limit ${id} is ${value}; it is a ${defaultLimits[id].unit}, so give 1 at most.`;
  if (id === 'releases' && (!Number.isInteger(value) || value < LEAST_RELEASES))
    return `The limit releases is ${value}; give a whole number from ${LEAST_RELEASES} on.`;
  if (id === 'uncovered' && value > WIDEST_GAP)
    return `The limit uncovered is ${value}; give ${WIDEST_GAP} degrees at most.`;
  return null;
}

function isLimitId(id: string): id is LimitId {
  return Object.hasOwn(defaultLimits, id);
}

/** The limits as they hold with what the settings have; a value there that cannot be is used by none. */
export function settledLimits(values: Readonly<Record<string, number>>): Limits {
  return setLimits(defaultLimits, values, 'settings').limits;
}
