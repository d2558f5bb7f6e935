/** What a key over a mark of the rails does, and how a wheel's turning becomes notches. */
import { STEPS } from '../stick/mapping-editor.svelte.ts';

export type MarkAction =
  | { readonly does: 'nudge'; readonly counts: number }
  | { readonly does: 'step'; readonly counts: number }
  | { readonly does: 'reset'; readonly to: 'now' | 'proposed' }
  | { readonly does: 'undo' | 'redo' };

export interface Pressed {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

const WAYS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };
const LEAPS: Readonly<Record<string, number>> = { PageUp: 64, PageDown: -64 };

/**
 * Arrows move by the step, with Shift by the larger one; the page keys by 64. 1 to 4 choose a step, 5 the own one. Z
 * undoes, Y (or Shift with Z) redoes, with Ctrl or without. Delete and P put the number back to the proposed one, N to now.
 * Null for a key that means something else.
 */
export function markAction(pressed: Pressed, step: number, larger: number, own: number): MarkAction | null {
  const { key, shiftKey } = pressed;
  const letter = key.toLowerCase();
  if (pressed.altKey) return null;
  if (letter === 'z') return { does: shiftKey ? 'redo' : 'undo' };
  if (letter === 'y') return { does: 'redo' };
  if (pressed.ctrlKey || pressed.metaKey) return null;
  const way = WAYS[key];
  if (way !== undefined) return { does: 'nudge', counts: way * (shiftKey ? larger : step) };
  const leap = LEAPS[key];
  if (leap !== undefined) return { does: 'nudge', counts: leap };
  if (letter === 'p' || key === 'Delete' || key === 'Backspace') return { does: 'reset', to: 'proposed' };
  if (letter === 'n') return { does: 'reset', to: 'now' };
  const chosen = /^[1-5]$/u.test(key) ? (STEPS[Number(key) - 1] ?? own) : null;
  return chosen === null ? null : { does: 'step', counts: chosen };
}

/** Pixels that a wheel's notch scrolls at least; finer wheels and pads are added up. */
const NOTCH = 50;

export class WheelNotches {
  #rest = 0;

  /** Whole notches that have come together, positive downwards. */
  take(delta: number): number {
    if (Math.sign(delta) !== Math.sign(this.#rest)) this.#rest = 0;
    this.#rest += delta;
    const notches = Math.trunc(this.#rest / NOTCH);
    this.#rest -= notches * NOTCH;
    // One event is one notch at most: a wheel that tells 100 pixels a notch counts as one that tells 50.
    if (Math.abs(notches) > 1) this.#rest = 0;
    return Math.sign(notches);
  }
}
