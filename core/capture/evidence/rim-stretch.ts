/** Samples on the rim that belong to no turn yet, with what is decided by them kept as they come. */
import type { RimSample } from './rim-sample.ts';

export class RimStretch {
  #samples: RimSample[] = [];
  #low: RimSample | null = null;
  #high: RimSample | null = null;
  #leastRadius = Number.POSITIVE_INFINITY;

  /** Of the least accumulated angle. */
  get low(): RimSample | null {
    return this.#low;
  }

  /** Of the greatest accumulated angle. */
  get high(): RimSample | null {
    return this.#high;
  }

  get leastRadius(): number {
    return this.#leastRadius;
  }

  push(sample: RimSample): void {
    this.#samples.push(sample);
    if (this.#low === null || sample.angle < this.#low.angle) this.#low = sample;
    if (this.#high === null || sample.angle > this.#high.angle) this.#high = sample;
    this.#leastRadius = Math.min(this.#leastRadius, sample.radius);
  }

  clear(): void {
    this.#samples = [];
    this.#low = null;
    this.#high = null;
    this.#leastRadius = Number.POSITIVE_INFINITY;
  }

  /** The samples from this one on. */
  from(sample: RimSample | null): readonly RimSample[] {
    return sample === null ? this.#samples : this.#samples.slice(this.#samples.indexOf(sample));
  }
}
