/** A column of numbers that grows page by page as they come: nothing is copied before its length is known, and one that stays empty takes no room. */

const PAGE = 16_384;

/** Of 64-bit floating numbers or of bytes. */
class GrowingColumn<T extends Float64Array | Uint8Array> {
  readonly #make: (length: number) => T;
  #full: T[] = [];
  #page: T;
  #onPage = 0;

  constructor(make: (length: number) => T) {
    this.#make = make;
    this.#page = make(0);
  }

  get length(): number {
    return this.#full.length * PAGE + this.#onPage;
  }

  push(value: number): void {
    if (this.#onPage === this.#page.length) {
      if (this.#onPage > 0) this.#full.push(this.#page);
      this.#page = this.#make(PAGE);
      this.#onPage = 0;
    }
    this.#page[this.#onPage] = value;
    this.#onPage += 1;
  }

  /** The values pushed so far; the column is empty afterwards. */
  take(): T {
    const taken = this.#make(this.length);
    this.#full.forEach((page, i) => taken.set(page, i * PAGE));
    taken.set(this.#page.subarray(0, this.#onPage), this.#full.length * PAGE);
    this.#full = [];
    this.#onPage = 0;
    return taken;
  }
}

export function numberColumn(): GrowingColumn<Float64Array> {
  return new GrowingColumn((length) => new Float64Array(length));
}

export function byteColumn(): GrowingColumn<Uint8Array> {
  return new GrowingColumn((length) => new Uint8Array(length));
}
