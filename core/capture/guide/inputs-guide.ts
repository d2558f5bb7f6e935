/** Leads a hand through every button, hat direction and trigger of a pad; live, hands-free: it ends when all were seen. */
import type { PadLayout, ReadingSlot } from '../../pad/layout.ts';
import { InputWatch } from './input-watch.ts';
import { inputWords, listInputs } from './inputs-list.ts';

/** Controls that are named in one breath. */
const NAMED = 4;

export class InputsGuide {
  readonly #watches: readonly InputWatch[];
  #version = 0;
  #isConfirmed = false;
  #prompt = '';

  constructor(layout: PadLayout) {
    this.#watches = listInputs(layout).map((control) => new InputWatch(control));
    this.#say();
  }

  /** One a control, in the pad's order. */
  get watches(): readonly InputWatch[] {
    return this.#watches;
  }

  /** Grows with every change that shows. */
  get version(): number {
    return this.#version;
  }

  get missing(): readonly InputWatch[] {
    return this.#watches.filter((watch) => watch.missing !== null);
  }

  get prompt(): string {
    return this.#prompt;
  }

  get isDone(): boolean {
    return this.#isConfirmed || this.missing.length === 0;
  }

  reading(t: number, slot: ReadingSlot): void {
    if (this.isDone) return;
    let changed = false;
    for (const watch of this.#watches) changed = watch.take(t, slot) || changed;
    if (!changed) return;
    this.#version += 1;
    this.#say();
  }

  /** The hand's word that what is missing will not come. */
  confirm(): void {
    this.#isConfirmed = true;
  }

  #say(): void {
    const { missing } = this;
    if (this.#watches.length === 0) this.#prompt = 'This pad has no button, hat or trigger.';
    else if (missing.length === 0) this.#prompt = 'Every control was seen pressed and released.';
    else {
      const more = missing.length - NAMED;
      const named = missing
        .slice(0, NAMED)
        .map(({ control, missing: lacks }) => `${inputWords(control)} (${lacks ?? ''})`);
      this.#prompt = `Press and let go of every control once, in any order. Missing: ${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}.`;
    }
  }
}
