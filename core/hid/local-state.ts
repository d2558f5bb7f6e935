/** The usages collected since the last main item (HID 1.11, 6.2.2.8). */
import { failed, type Problem } from '../result.ts';
import type { Item } from './item.ts';
import { limits } from './limits.ts';
import { localTags } from './tags.ts';

/** One usage, or a range of them on one page. */
export interface UsageRange {
  page: number;
  /** The page came with the usage itself, in the upper half of four bytes of data. */
  readonly extended: boolean;
  readonly first: number;
  readonly last: number;
}

/** What is preferred for the next elements, and the alternatives that a delimited set gives beside it. */
export interface UsageSet {
  readonly preferred: UsageRange;
  readonly aliases: UsageRange[];
}

export class LocalState {
  readonly sets: UsageSet[] = [];
  /** Offset of the delimiter that opened the set under way; null outside of one. */
  openedAt: number | null = null;
  #opened: UsageSet | null = null;
  #minimum: Item | null = null;
  #maximum: Item | null = null;

  /**
   * Takes one local item; `page` is the Usage Page in force. Designator, string and unknown items are passed over.
   * Problems: nested or unopened delimiters, a reversed range, a range over two pages, too many alternatives.
   */
  take(item: Item, page: number): Problem | null {
    switch (item.tag) {
      case localTags.usage:
        return this.#add(rangeOf(item, item, page), item.at);
      case localTags.usageMinimum:
        this.#minimum = item;
        return this.#maximum === null ? null : this.#closeRange(item, this.#maximum, page);
      case localTags.usageMaximum:
        this.#maximum = item;
        return this.#minimum === null ? null : this.#closeRange(this.#minimum, item, page);
      case localTags.delimiter:
        return item.unsigned === 0 ? this.#closeSet(item.at) : this.#openSet(item.at);
      default:
        return null;
    }
  }

  /**
   * Readies the usages for a main item. The page of a usage is the one in force where it stands; short usages at the
   * end of the list that no longer match are moved to a page that was declared after them and not yet used. That is
   * how Linux reads 6.2.2.8, whose literal text would move every short usage to the page declared last.
   */
  close(page: number): Problem | null {
    if (this.openedAt !== null)
      return failed(
        'delimiter-open',
        `The delimiter opened at byte ${this.openedAt} is not closed before the main item; the descriptor is damaged.`,
        this.openedAt,
      ).problem;
    const ranges = this.sets.flatMap((set) => [set.preferred, ...set.aliases]);
    for (const range of ranges.reverse()) {
      if (range.extended) continue;
      if (range.page === page) break;
      range.page = page;
    }
    return null;
  }

  #add(range: UsageRange, at: number): Problem | null {
    if (this.openedAt === null) this.sets.push({ preferred: range, aliases: [] });
    else if (this.#opened === null) this.sets.push((this.#opened = { preferred: range, aliases: [] }));
    else if (this.#opened.aliases.length === limits.aliases)
      return failed(
        'aliases-too-many',
        `The delimited set at byte ${this.openedAt} has more than ${limits.aliases} alternatives; this is no sound descriptor.`,
        at,
      ).problem;
    else this.#opened.aliases.push(range);
    return null;
  }

  #closeRange(minimum: Item, maximum: Item, page: number): Problem | null {
    this.#minimum = null;
    this.#maximum = null;
    const range = rangeOf(minimum, maximum, page);
    const at = Math.max(minimum.at, maximum.at);
    if (minimum.size === 4 && maximum.size === 4 && minimum.unsigned >>> 16 !== maximum.unsigned >>> 16)
      return failed(
        'usage-range-pages-differ',
        `The usage range that ends at byte ${at} begins on another page; the descriptor is damaged.`,
        at,
      ).problem;
    if (range.last < range.first)
      return failed(
        'usage-range-reversed',
        `The usage range that ends at byte ${at} runs from ${range.first} down to ${range.last}; the descriptor is damaged.`,
        at,
      ).problem;
    return this.#add(range, at);
  }

  #openSet(at: number): Problem | null {
    if (this.openedAt !== null)
      return failed(
        'delimiter-nested',
        `The delimiter at byte ${at} opens a set inside a set; this is not allowed.`,
        at,
      ).problem;
    this.openedAt = at;
    this.#opened = null;
    return null;
  }

  #closeSet(at: number): Problem | null {
    if (this.openedAt === null)
      return failed('delimiter-unopened', `The delimiter at byte ${at} closes a set that was never opened.`, at)
        .problem;
    this.openedAt = null;
    return null;
  }
}

function rangeOf(first: Item, last: Item, page: number): UsageRange {
  const extended = first.size === 4 ? first : last.size === 4 ? last : null;
  return {
    page: extended === null ? page : extended.unsigned >>> 16,
    extended: extended !== null,
    first: first.unsigned & 0xffff,
    last: last.unsigned & 0xffff,
  };
}
