/** The limits that findings are held against on this bench, the same in every shell: a file's, else the settings', else the program's own. */
import { defaultLimits, type Limits } from '../../../core/findings/limits.ts';
import { setLimits, settledLimits } from '../../../core/findings/set-limits.ts';
import type { Settings } from '../calls/settings-port.ts';

/** Values of limits that this version does not know, or that cannot be, are kept in the settings and used by none. */
export function limitsInForce(values: Settings['limits'], file: Readonly<Record<string, number>> = {}): Limits {
  return setLimits(settledLimits(values), file, 'file').limits;
}

/** One sentence for each value in the settings that is not used; it stays there. */
export function unusedLimits(values: Settings['limits']): string[] {
  return setLimits(defaultLimits, values, 'settings').refused.map((says) => `In the settings: ${says} It is not used.`);
}
