/** Stretches of a pad's memory that hold no calibration of a stick, by kind: each fills a part with what such a stretch holds. */
import type { Random } from '../../core/numeric/random.ts';

type Fill = (part: Uint8Array, random: Random) => void;

/** By what a stretch holds. */
export const dumpContent = {
  erased: (part) => part.fill(0xff),
  zeros: (part) => part.fill(0),
  /** Two-byte instructions of a small processor: few of them often, registers and small offsets, calls in pairs. */
  code(part, random) {
    const often = Array.from({ length: 24 }, () => random.integer(0, 255));
    for (let at = 0; at + 1 < part.length; at += 2) {
      const call = random.next() < 0.06;
      part[at] = call || random.next() < 0.3 ? random.integer(0, 255) : random.integer(0, 7) * 9;
      part[at + 1] = call ? 0xf0 | random.integer(0, 15) : (often[Math.floor(24 * random.next() ** 2)] ?? 0);
    }
  },
  text(part, random) {
    for (let at = 0; at < part.length;) {
      const length = 2 + Math.floor(9 * random.next());
      for (let index = 0; index < length && at < part.length; index += 1)
        part[at++] = 97 + Math.floor(26 * random.next() ** 1.4);
      if (at < part.length) part[at++] = random.next() < 0.2 ? 0 : 32;
    }
  },
  compressed(part, random) {
    for (let at = 0; at < part.length; at += 1) part[at] = random.integer(0, 255);
  },
  /** Numbers of a fixed step, e.g. a table of thresholds; from anew when it has reached the top. */
  ramps(part, random) {
    const [step, top] = [random.integer(1, 700), 2 ** random.integer(10, 16)];
    eachWord(part, random.next() < 0.7, (index) => (index * step) % top);
  },
  /** A wave around the middle of the scale, a few to many numbers a period, over and over. */
  waves(part, random) {
    const middle = 2 ** random.integer(7, 15);
    const [period, share] = [random.integer(3, 64), random.next()];
    const word = (index: number): number =>
      Math.floor(middle + share * (middle - 1) * Math.sin((2 * Math.PI * index) / period));
    if (middle > 128) eachWord(part, random.next() < 0.7, word);
    else for (let at = 0; at < part.length; at += 1) part[at] = word(at);
  },
  /** One record over and over: fixed fields, a counter, and in some stretches a field that differs a little. */
  records(part, random) {
    const length = random.integer(6, 48);
    const record = Array.from({ length }, () => anyField(random));
    const [counter, loose] = [random.integer(0, length - 1), random.next() < 0.5 ? random.integer(0, length - 1) : -1];
    for (let at = 0; at < part.length; at += 1) {
      const [field, index] = [at % length, Math.floor(at / length)];
      const slip = field === loose ? random.integer(-3, 3) : 0;
      part[at] = field === counter ? index & 0xff : (record[field] ?? 0) + slip;
    }
  },
  /** Least, usual and greatest of other things than sticks, in growing 12-bit or 16-bit numbers; the whole list stands several times. */
  limits(part, random) {
    const top = 2 ** random.integer(11, 16) - 1;
    const list = Array.from({ length: random.integer(2, 40) }, () => {
      return Array.from({ length: 3 }, () => random.integer(0, top)).toSorted((a, b) => a - b);
    }).flat();
    eachWord(part, random.next() < 0.7, (index) => list[index % list.length] ?? 0);
  },
  /** Readings of a converter of 12 bits about some level, packed or in words. */
  readings(part, random) {
    let level = random.integer(300, 3800);
    const noise = random.integer(1, 60);
    const next = (): number => {
      if (random.next() < 0.01) level = random.integer(300, 3800);
      return Math.min(4095, Math.max(0, Math.round(level + noise * random.normal())));
    };
    if (random.next() < 0.5) eachWord(part, true, next);
    else
      for (let at = 0; at + 2 < part.length; at += 3) {
        const [a, b] = [next(), next()];
        part.set([a & 0xff, (a >> 8) | ((b & 15) << 4), b >> 4], at);
      }
  },
  /** A picture: bytes that change slowly. */
  picture(part, random) {
    let level = random.integer(0, 255);
    for (let at = 0; at < part.length; at += 1) {
      level = Math.min(255, Math.max(0, level + Math.round(4 * random.normal())));
      part[at] = level;
    }
  },
  /** Addresses of four bytes whose upper halves agree. */
  pointers(part, random) {
    const upper = [random.integer(0, 15), 0x20 + random.integer(0, 1)];
    for (let at = 0; at + 3 < part.length; at += 4)
      part.set([random.integer(0, 63) * 4, random.integer(0, 255), ...upper], at);
  },
  /** Fractions as 32-bit floating numbers. */
  floats(part, random) {
    const view = new DataView(part.buffer, part.byteOffset, part.byteLength);
    for (let at = 0; at + 3 < part.length; at += 4) view.setFloat32(at, random.normal(), true);
  },
  /** Settings in erased pages: a few bytes, then nothing. */
  settings(part, random) {
    part.fill(0xff);
    for (let at = 0; at < part.length; at += 64)
      for (let index = 0; index < random.integer(0, 24) && at + index < part.length; index += 1)
        part[at + index] = anyField(random);
  },
} satisfies Record<string, Fill>;

/** Bytes of records: zeros, ones and small numbers more often than others. */
function anyField(random: Random): number {
  const chance = random.next();
  if (chance < 0.25) return 0;
  if (chance < 0.35) return 0xff;
  return chance < 0.65 ? random.integer(0, 15) : random.integer(0, 255);
}

function eachWord(part: Uint8Array, isLittle: boolean, valueOf: (index: number) => number): void {
  const view = new DataView(part.buffer, part.byteOffset, part.byteLength);
  for (let index = 0; 2 * index + 1 < part.length; index += 1) view.setUint16(2 * index, valueOf(index), isLittle);
}
