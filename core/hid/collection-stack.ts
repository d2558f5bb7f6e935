/** The collections that are open at a place in a descriptor (HID 1.11, 6.2.2.6). */
import { failed, type Problem } from '../result.ts';
import type { Usage } from './control.ts';
import type { Item } from './item.ts';
import { limits } from './limits.ts';

const APPLICATION = 0x01;

interface Open {
  readonly at: number;
  readonly ordinal: number;
  /** Of the outermost application collection up to this one. */
  readonly application: Usage | null;
}

export class CollectionStack {
  readonly #open: Open[] = [];
  #opened = 0;

  /** `usage` is the first one before the item; null where there is none. Problems: too deep, too many. */
  open(item: Item, usage: Usage | null): Problem | null {
    if (this.#open.length === limits.collectionDepth || this.#opened === limits.collections)
      return failed(
        'collections-too-many',
        `The collection at byte ${item.at} is one too many (${limits.collections} in all, ${limits.collectionDepth} deep); this is no sound descriptor.`,
        item.at,
      ).problem;
    const application = this.application ?? ((item.unsigned & 0xff) === APPLICATION ? usage : null);
    this.#open.push({ at: item.at, ordinal: this.#opened, application });
    this.#opened += 1;
    return null;
  }

  /** Problem: an End Collection that ends nothing. */
  close(item: Item): Problem | null {
    if (this.#open.pop() !== undefined) return null;
    return failed(
      'collection-unopened',
      `The End Collection at byte ${item.at} has no collection to end; the descriptor is damaged.`,
      item.at,
    ).problem;
  }

  /** Called after the last item. Problem: a collection still open. */
  finish(): Problem | null {
    const left = this.#open.at(-1);
    if (left === undefined) return null;
    return failed(
      'collection-unclosed',
      `The collection opened at byte ${left.at} is never ended; the descriptor is cut off, read it again in full.`,
      left.at,
    ).problem;
  }

  get application(): Usage | null {
    return this.#open.at(-1)?.application ?? null;
  }

  get collection(): number | null {
    return this.#open.at(-1)?.ordinal ?? null;
  }
}
