/** Keeps account of the releases that are asked for and taken. */
import type { Pair } from '../pad/stick.ts';
import { releaseDirection } from './release-directions.ts';

export class ReleaseList {
  readonly #open: number[];
  readonly #taken: { readonly toward: number; readonly rest: Pair }[] = [];

  constructor(releases: number) {
    this.#open = Array.from({ length: releases }, (_, number) => releaseDirection(number));
  }

  /** The direction to push toward now; null when none is left. */
  get next(): number | null {
    return this.#open[0] ?? null;
  }

  get taken(): readonly Pair[] {
    return this.#taken.map(({ rest }) => rest);
  }

  get asked(): number {
    return this.#taken.length + this.#open.length;
  }

  take(rest: Pair): void {
    const toward = this.#open.shift();
    if (toward !== undefined) this.#taken.push({ toward, rest });
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
