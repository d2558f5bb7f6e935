/** A column of numbers that grows as they come; its memory doubles and is cut to length at the end, never held twice. */
export class GrowingColumn {
  #values = new Float64Array(1024);
  #length = 0;

  get length(): number {
    return this.#length;
  }

  push(value: number): void {
    if (this.#length === this.#values.length) this.#resize(2 * this.#length);
    this.#values[this.#length] = value;
    this.#length += 1;
  }

  /** The values pushed so far; the column is empty afterwards. */
  take(): Float64Array {
    this.#resize(this.#length);
    const taken = this.#values;
    this.#values = new Float64Array(1024);
    this.#length = 0;
    return taken;
  }

  #resize(length: number): void {
    this.#values = new Float64Array(this.#values.buffer.transfer(length * Float64Array.BYTES_PER_ELEMENT));
  }
}
