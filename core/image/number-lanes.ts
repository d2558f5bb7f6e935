/** The ways in which a number is read at a byte. */

/** A byte, a word, or a half of three bytes that hold two numbers of 12 bits. */
export type Lane = 'byte' | 'little' | 'big' | 'firstOfPair' | 'secondOfPair';

/** How many numbers a lane can read; how far on the next number of a record begins, and in which lane. */
export const LANES: Readonly<Record<Lane, { readonly numbers: number; readonly step: number; readonly next: Lane }>> = {
  byte: { numbers: 256, step: 1, next: 'byte' },
  little: { numbers: 65_536, step: 2, next: 'little' },
  big: { numbers: 65_536, step: 2, next: 'big' },
  firstOfPair: { numbers: 4096, step: 1, next: 'secondOfPair' },
  secondOfPair: { numbers: 4096, step: 2, next: 'firstOfPair' },
};

/** Bytes beyond the image read as 0. */
export function readNumber(image: Uint8Array, lane: Lane, at: number): number {
  const [a, b] = [image[at] ?? 0, image[at + 1] ?? 0];
  switch (lane) {
    case 'byte':
      return a;
    case 'little':
      return a | (b << 8);
    case 'big':
      return (a << 8) | b;
    case 'firstOfPair':
      return a | ((b & 15) << 8);
    case 'secondOfPair':
      return (a >> 4) | (b << 4);
  }
}
