/** The changes of a patch as rows that a person checks: each named value with old and new, and the bytes in a second column. */
import type { Change } from '../../core/image/patch.ts';
import type { Table } from '../kit/figures/table.ts';
import type { Comparison } from './memory-images.svelte.ts';
import type { SessionState } from './memory-session.svelte.ts';

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

/** `short`: named values alone. */
export function changesTable(changes: readonly Change[], short = false): Table {
  return {
    caption: 'Changes, value by value',
    heads: [
      { says: 'value', words: true },
      'old',
      'new',
      ...(short ? [] : [{ says: 'bytes', tone: 'soft', most: '24em' } as const, { says: 'at', tone: 'soft' } as const]),
    ],
    rows: changeRows(changes).map(({ name, old, new: now, bytes, at }) => [
      name,
      old,
      now,
      ...(short ? [] : [bytes, at]),
    ]),
    selected: null,
  };
}

/** What stands where a write ended neither before nor after. */
export function leftTable(bytes: SessionState['bytes']): Table {
  return {
    caption: 'Bytes that differ from before and from what was planned',
    heads: ['at', 'before', 'planned', 'now', { says: 'means', words: true, wraps: true }],
    rows: bytes.map(({ offset, before, after, now, means }) => [
      hexOffset(offset),
      before,
      after,
      now ?? 'not known',
      means ?? '',
    ]),
    selected: null,
  };
}

/** Two images, run by run. */
export function differencesTable(runs: Comparison['runs']): Table {
  return {
    caption: 'Bytes that differ between the two images',
    heads: [
      'at',
      { says: 'means', words: true, wraps: true },
      { says: 'open image', words: true, wraps: 'anywhere' },
      { says: 'other', words: true, wraps: 'anywhere' },
    ],
    rows: runs.map((run) => [
      hexOffset(run.offset),
      run.means ?? (run.volatile ? 'changes by itself' : 'not named by the map'),
      run.old,
      run.new,
    ]),
    selected: null,
  };
}

/** E.g. 11280 → `0x2c10`. */
export function hexOffset(offset: number): string {
  return `0x${offset.toString(16).padStart(4, '0')}`;
}
