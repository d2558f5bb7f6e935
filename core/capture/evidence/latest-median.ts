/** The median of the latest so many numbers, kept in order as they come. */
export class LatestMedian {
  readonly #latest: Float64Array;
  readonly #sorted: Float64Array;
  #count = 0;
  #oldest = 0;

  constructor(most: number) {
    this.#latest = new Float64Array(most);
    this.#sorted = new Float64Array(most).fill(Number.NaN);
  }

  /** Of an even number the upper of the two in the middle; NaN without numbers. */
  get median(): number {
    return this.#sorted[this.#count >> 1] ?? Number.NaN;
  }

  add(value: number): void {
    const size = this.#latest.length;
    if (this.#count === size) this.#drop(this.#latest[this.#oldest] ?? Number.NaN);
    this.#latest[this.#oldest] = value;
    this.#oldest = (this.#oldest + 1) % size;
    let at = this.#count;
    for (; at > 0 && (this.#sorted[at - 1] ?? 0) > value; at -= 1) this.#sorted[at] = this.#sorted[at - 1] ?? 0;
    this.#sorted[at] = value;
    this.#count += 1;
  }

  clear(): void {
    this.#count = 0;
    this.#oldest = 0;
    this.#sorted.fill(Number.NaN);
  }

  #drop(value: number): void {
    const at = this.#sorted.indexOf(value);
    this.#sorted.copyWithin(at, at + 1, this.#count);
    this.#count -= 1;
  }
}
