/** Seeded chance of the second hand: a small generator of its own, so that nothing is shared with the program. */

/** Equal seeds and streams give equal numbers on every machine (sfc32, 32-bit whole-number arithmetic). */
export class Chance {
  readonly #words: [number, number, number, number];
  #spare: number | null = null;

  /** `stream` tells apart what must not depend on how much chance another concern took. */
  constructor(seed: number, stream: string) {
    this.#words = [seed | 0, hashOf(stream) | 0, 0x2545f491, 1];
    for (let warm = 0; warm < 16; warm += 1) this.next();
  }

  /** Uniform in [0, 1). */
  next(): number {
    const [a, b, c, count] = this.#words;
    const sum = (((a + b) | 0) + count) | 0;
    this.#words[3] = (count + 1) | 0;
    this.#words[0] = b ^ (b >>> 9);
    this.#words[1] = (c + (c << 3)) | 0;
    this.#words[2] = (((c << 21) | (c >>> 11)) + sum) | 0;
    return (sum >>> 0) / 2 ** 32;
  }

  /** Standard normal (Box and Muller). */
  normal(): number {
    if (this.#spare !== null) {
      const kept = this.#spare;
      this.#spare = null;
      return kept;
    }
    const size = Math.sqrt(-2 * Math.log(1 - this.next()));
    const angle = 2 * Math.PI * this.next();
    this.#spare = size * Math.sin(angle);
    return size * Math.cos(angle);
  }

  /** Normal with this σ, drawn anew until it is within ±most: parts beyond a tolerance are not shipped. */
  within(sigma: number, most: number): number {
    for (;;) {
      const value = sigma * this.normal();
      if (Math.abs(value) <= most) return value;
    }
  }

  between(least: number, most: number): number {
    return least + (most - least) * this.next();
  }

  whole(least: number, most: number): number {
    return least + Math.floor((most - least + 1) * this.next());
  }

  happens(share: number): boolean {
    return this.next() < share;
  }

  pick<const T>(list: readonly [T, ...T[]]): T {
    return list[Math.floor(this.next() * list.length)] ?? list[0];
  }
}

/** 32-bit hash of a text (FNV-1a). */
export function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193);
  return hash >>> 0;
}
