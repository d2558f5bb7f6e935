/**
 * Keys that pads keep when they are plugged in again: by what they are like, numbered where several are alike. A pad that
 * cannot be told from its like gets a key that none had before whenever it comes: nothing is carried from one to another.
 */
import type { PadIdentity } from '../../core/pad/identity.ts';
import { tellingSerial } from '../../core/pad/owner.ts';

interface Pad {
  readonly likeness: string;
  readonly path: string;
  readonly identity: PadIdentity;
}

export class PadKeys {
  /** Key by path of the pads that are there. */
  #present = new Map<string, string>();
  /** The highest number given so far, by likeness. */
  readonly #highest = new Map<string, number>();
  /** What two pads at once were like, serial number included. */
  readonly #alike = new Set<string>();

  /** A key for each of the pads that are there now, in their order. One that stayed on its path keeps its key. */
  assign(pads: readonly Pad[]): readonly string[] {
    pads.forEach(({ likeness }, index) => {
      if (pads.findIndex((one) => one.likeness === likeness) !== index) this.#alike.add(likeness);
    });
    const present = new Map<string, string>();
    for (const { path, likeness } of pads) {
      const key = this.#present.get(path);
      if (key?.startsWith(`${likeness}#`) === true) present.set(path, key);
    }
    for (const pad of pads) if (!present.has(pad.path)) present.set(pad.path, this.#keyOf(pad));
    this.#present = present;
    return pads.map(({ path, likeness }) => present.get(path) ?? likeness);
  }

  #keyOf({ likeness, identity }: Pad): string {
    const isTold = tellingSerial(identity.serial) !== null && !this.#alike.has(likeness);
    const number = isTold ? 1 : (this.#highest.get(likeness) ?? 0) + 1;
    this.#highest.set(likeness, number);
    return `${likeness}#${number}`;
  }
}
