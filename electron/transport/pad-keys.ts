/** Keys that pads keep when they are plugged in again: by what they are like, numbered where several are alike. */

interface Pad {
  readonly likeness: string;
  readonly path: string;
}

export class PadKeys {
  /** Key by path of the pads that are there. */
  #present = new Map<string, string>();

  /** A key for each of the pads that are there now, in their order. One that stayed keeps its key, a new one gets the first free. */
  assign(pads: readonly Pad[]): readonly string[] {
    const stayed = new Map<string, string>();
    for (const { path, likeness } of pads) {
      const key = this.#present.get(path);
      if (key?.startsWith(`${likeness}#`) === true) stayed.set(path, key);
    }
    const taken = new Set(stayed.values());
    const present = new Map(pads.map((pad) => [pad.path, stayed.get(pad.path) ?? firstFree(pad.likeness, taken)]));
    this.#present = present;
    return pads.map(({ path, likeness }) => present.get(path) ?? likeness);
  }
}

function firstFree(likeness: string, taken: Set<string>): string {
  let number = 1;
  while (taken.has(`${likeness}#${number}`)) number += 1;
  const key = `${likeness}#${number}`;
  taken.add(key);
  return key;
}
