/** The mappings that were kept under a name, in the settings of the bench. */
import type { PadMapping } from '../../core/mapping/mapping.ts';
import { kinshipOf } from '../../core/pad/owner.ts';
import type { Settings } from '../frame/settings-state.svelte.ts';

export type KeptMapping = Settings['mappings'][number];

/** Names are as long as a line of the list shows. */
const LONGEST = 80;

/** Whose mapping it is, and what its counts mean. */
export type MappingSource = Pick<KeptMapping, 'product' | 'pad' | 'domain'>;

/** Why a mapping cannot be kept under a name, or null. One of that name that is another pad's stays as it is. */
export function checkName(
  name: string,
  kept: readonly KeptMapping[] = [],
  source: MappingSource | null = null,
): string | null {
  const before = kept.find((one) => one.name === name.trim());
  if (before !== undefined && source !== null && kinshipOf(before.pad, source.pad) === 'other')
    return `${before.name} is a mapping of another pad (${before.product}); write another name.`;
  const length = name.trim().length;
  if (length === 0) return 'Write a name to keep yours under.';
  return length > LONGEST ? `The name has ${String(length)} letters; write at most ${String(LONGEST)}.` : null;
}

/** The list with yours under the name, newest first; one of that name is replaced, its other stick stays. */
export function keepUnder(
  kept: readonly KeptMapping[],
  name: string,
  source: MappingSource,
  sticks: PadMapping,
): KeptMapping[] {
  const called = name.trim();
  const before = kept.find((one) => one.name === called);
  return [
    { ...source, name: called, sticks: { ...before?.sticks, ...sticks } },
    ...kept.filter((one) => one.name !== called),
  ];
}

export function withoutName(kept: readonly KeptMapping[], name: string): KeptMapping[] {
  return kept.filter((one) => one.name !== name);
}
