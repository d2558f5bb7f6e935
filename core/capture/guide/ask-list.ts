/** Keeps account of what is asked for, direction by direction, and of what was taken. */

/** `T` is what is kept of each that was taken. */
export class AskList<T> {
  readonly #open: number[];
  readonly #taken: { readonly toward: number; readonly kept: T }[] = [];

  /** `directions` in the order asked for, degrees counter-clockwise from +x. */
  constructor(directions: readonly number[]) {
    this.#open = [...directions];
  }

  /** The direction that is asked for now; null when none is left. */
  get next(): number | null {
    return this.#open[0] ?? null;
  }

  /** In the order taken, each with the direction that was asked for. */
  get taken(): readonly { readonly toward: number; readonly kept: T }[] {
    return this.#taken;
  }

  /** Taken and still to come: skipped ones are no longer asked for. */
  get asked(): number {
    return this.#taken.length + this.#open.length;
  }

  take(kept: T): void {
    const toward = this.#open.shift();
    if (toward !== undefined) this.#taken.push({ toward, kept });
  }

  skip(): void {
    this.#open.shift();
  }

  /** Puts the last one taken before those that are open; false where none was taken. */
  repeat(): boolean {
    const last = this.#taken.pop();
    if (last !== undefined) this.#open.unshift(last.toward);
    return last !== undefined;
  }
}
