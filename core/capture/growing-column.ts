/** A column of numbers that grows page by page as they come: nothing is copied before its length is known. */

const PAGE = 16_384;

export class GrowingColumn {
  #full: Float64Array[] = [];
  #page = new Float64Array(PAGE);
  #onPage = 0;

  get length(): number {
    return this.#full.length * PAGE + this.#onPage;
  }

  push(value: number): void {
    if (this.#onPage === PAGE) {
      this.#full.push(this.#page);
      this.#page = new Float64Array(PAGE);
      this.#onPage = 0;
    }
    this.#page[this.#onPage] = value;
    this.#onPage += 1;
  }

  /** The values pushed so far; the column is empty afterwards. */
  take(): Float64Array {
    const taken = new Float64Array(this.length);
    this.#full.forEach((page, i) => taken.set(page, i * PAGE));
    taken.set(this.#page.subarray(0, this.#onPage), this.#full.length * PAGE);
    this.#full = [];
    this.#onPage = 0;
    return taken;
  }
}
