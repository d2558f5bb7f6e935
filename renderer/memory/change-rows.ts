/** The changes of a patch as rows that a person checks: each named value with old and new, and the bytes in a second column. */
import type { Change } from '../../core/image/patch.ts';

export interface ChangeRow {
  /** E.g. `factory left x.max`; what the change does where it names no value. */
  readonly name: string;
  readonly old: string;
  readonly new: string;
  /** E.g. `ace556 → 46e556`; empty below the first value of the same bytes. */
  readonly bytes: string;
  /** Offset in hex, e.g. `0x2c10`; empty where `bytes` is. */
  readonly at: string;
}

/** `x.max 3400 → 3350` and the like, with the layer and the stick before the first of them. */
const VALUE = /^(?<name>.*?)\s+(?<old>\S+) → (?<now>\S+)$/u;

export function changeRows(changes: readonly Change[]): ChangeRow[] {
  return changes.flatMap((change) => {
    const parts = change.means.split('; ');
    const place =
      /^(?<place>(?:undo: )?(?:factory|user)(?: left| right)?)\s/u.exec(parts[0] ?? '')?.groups?.['place'] ?? '';
    return parts.map((part, index) => {
      const says = index === 0 ? part : `${place} ${part}`.trim();
      const value = VALUE.exec(says)?.groups;
      return {
        name: value?.['name'] ?? says,
        old: value?.['old'] ?? '',
        new: value?.['now'] ?? '',
        bytes: index === 0 ? `${change.old} → ${change.new}` : '',
        at: index === 0 ? hexOffset(change.offset) : '',
      };
    });
  });
}

/** E.g. 11280 → `0x2c10`. */
export function hexOffset(offset: number): string {
  return `0x${offset.toString(16).padStart(4, '0')}`;
}
