/** The limits that findings are held against on this bench: the program's own, where the workshop has set none. */
import { defaultLimits, type Limit, type LimitId, type Limits } from '../../core/findings/limits.ts';
import type { Settings } from './settings-port.ts';

/** Values of limits that this version does not know are kept in the settings and used by none. */
export function limitsInForce(values: Settings['limits']): Limits {
  const inForce = (Object.keys(defaultLimits) as LimitId[]).map((id): [LimitId, Limit] => {
    const value = values[id];
    const usual = defaultLimits[id];
    if (value === undefined || value === usual.value) return [id, usual];
    return [id, { ...usual, value, from: 'workshop', source: 'Set on this bench.' }];
  });
  return Object.fromEntries(inForce) as Record<LimitId, Limit>;
}
