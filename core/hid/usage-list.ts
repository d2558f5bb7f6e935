/** Which usages the elements of a main item have, from the sets that stand before it. */
import { done, failed, type Result } from '../result.ts';
import type { Usage } from './control.ts';
import { limits } from './limits.ts';
import type { UsageRange, UsageSet } from './local-state.ts';

export interface ElementUsage {
  readonly usage: Usage;
  readonly aliases: readonly Usage[];
}

/** What the indices of an array select, and the range that these usages span on the page of the first. */
export interface Selection {
  readonly choices: readonly Usage[];
  readonly usagePage: number;
  readonly usage: number;
  readonly usageMinimum: number;
  readonly usageMaximum: number;
}

const NO_ALIASES: readonly Usage[] = [];

/** Makes usages for one descriptor and counts them, so that no input can ask for more than the limit. */
export class UsageMaker {
  #made = 0;
  readonly #known = new Map<string, Selection>();

  /**
   * One usage for each of `count` elements, in order; where the list is shorter its last usage repeats
   * (HID 1.11, 6.2.2.8), and what the list has too many of is left. `sets` is not empty.
   */
  elements(sets: readonly UsageSet[], count: number, at: number): Result<readonly ElementUsage[]> {
    const elements: ElementUsage[] = [];
    for (const set of sets) {
      for (let index = 0; index <= set.preferred.last - set.preferred.first; index += 1) {
        if (elements.length === count) return done(elements);
        const aliases = this.#aliases(set.aliases, index);
        if (this.#made > limits.usages) return tooMany(at);
        elements.push({ usage: usageOf(set.preferred, index), aliases });
      }
    }
    const last = elements.at(-1);
    while (last !== undefined && elements.length < count) elements.push(last);
    return done(elements);
  }

  /**
   * What the indices 0 … `indices` − 1 of an array select. `sets` is not empty. Equal lists are made once, however many
   * items they stand before.
   */
  selection(sets: readonly UsageSet[], indices: number, at: number): Result<Selection> {
    const key = `${indices}|${sets.map(({ preferred: { page, first, last } }) => `${page}:${first}-${last}`).join()}`;
    const known = this.#known.get(key);
    if (known !== undefined) return done(known);
    const choices: Usage[] = [];
    for (const { preferred } of sets) {
      for (let index = 0; index <= preferred.last - preferred.first && choices.length < indices; index += 1) {
        this.#made += 1;
        if (this.#made > limits.usages) return tooMany(at);
        choices.push(usageOf(preferred, index));
      }
    }
    const selection = selectionOf(choices);
    this.#known.set(key, selection);
    return done(selection);
  }

  #aliases(ranges: readonly UsageRange[], index: number): readonly Usage[] {
    if (ranges.length === 0) return NO_ALIASES;
    const fitting = ranges.filter((range) => index <= range.last - range.first);
    this.#made += fitting.length;
    return fitting.map((range) => usageOf(range, index));
  }
}

function selectionOf(choices: readonly Usage[]): Selection {
  const [first = { usagePage: 0, usage: 0 }] = choices;
  let [usageMinimum, usageMaximum] = [first.usage, first.usage];
  for (const { usagePage, usage } of choices) {
    if (usagePage !== first.usagePage) continue;
    usageMinimum = Math.min(usageMinimum, usage);
    usageMaximum = Math.max(usageMaximum, usage);
  }
  return { choices, ...first, usageMinimum, usageMaximum };
}

function usageOf(range: UsageRange, index: number): Usage {
  return { usagePage: range.page, usage: range.first + index };
}

function tooMany(at: number): ReturnType<typeof failed> {
  return failed(
    'usages-too-many',
    `With the item at byte ${at} the descriptor names more than ${limits.usages} usages; this is no sound descriptor.`,
    at,
  );
}
