/**
 * What outlives a reload of the page: wish and "yours" of each survey, in the window's session storage. It is there for the
 * reload alone: the owner of the stick reads it once for each survey, and no view ever does. It belongs to the window rather
 * than to the bench's settings, since a history with undo is of the hand that makes it: two windows must not take back each
 * other's steps. What is to outlive the window is kept under a name.
 */
import { z } from 'zod';
import type { NudgeHistory } from '../../core/mapping/nudge-history.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { Request } from '../../shared/contract.ts';
import { proposalWishSchema } from '../../shared/schemas.ts';
import { historyOf, historyText } from './kept-history.ts';
import type { OwnMapping } from './origin.ts';

export type Wish = Request<'surveys.propose'>['wish'];

/** The part of the window's session storage that is used. */
export interface ReloadStore {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

/** Steps that are kept where the store has no room for all. */
const FEWER = 500;

const wishText = z
  .string()
  .transform((text, context): unknown => {
    try {
      return JSON.parse(text);
    } catch {
      context.addIssue('no JSON');
      return z.NEVER;
    }
  })
  .pipe(proposalWishSchema);

export class OverReload {
  readonly #store: ReloadStore;

  constructor(store: ReloadStore) {
    this.#store = store;
  }

  /** Null where none was kept. */
  wish(survey: string): Wish | null {
    const read = wishText.safeParse(this.#store.getItem(`wish ${survey}`));
    return read.success ? read.data : null;
  }

  /** False where the window has no room for it. */
  keepWish(survey: string, wish: Wish): boolean {
    return this.#write(`wish ${survey}`, JSON.stringify(wish));
  }

  history(survey: string, stick: StickId): NudgeHistory<OwnMapping> {
    return historyOf(this.#store.getItem(`yours ${survey} ${stick}`));
  }

  /** The newest steps alone where the store is too small for all; false where even they find no room. */
  keepHistory(survey: string, stick: StickId, history: NudgeHistory<OwnMapping>): boolean {
    const key = `yours ${survey} ${stick}`;
    return this.#write(key, historyText(history)) || this.#write(key, historyText(history, FEWER));
  }

  #write(key: string, text: string): boolean {
    try {
      this.#store.setItem(key, text);
      return true;
    } catch (refusal) {
      // The store's quota is the only refusal that is known here.
      if (refusal instanceof DOMException) return false;
      throw refusal;
    }
  }
}
