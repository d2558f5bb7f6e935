/** From which directions releases are asked for. */

/**
 * Degrees counter-clockwise from +x of the release with this number, from 0. Opposite directions follow on each other,
 * eight are spread evenly before the next eight stand between them, and so on: wherever a capture is broken off,
 * what was taken is spread. 24 are 15° apart. (Van der Corput's sequences of base 2 and 3.)
 */
export function releaseDirection(number: number): number {
  const eighth = 45 * 8 * radicalInverse(number % 8, 2);
  const between = 45 * radicalInverse(Math.floor(number / 8), 3);
  return Math.round(eighth + between) % 360;
}

/** The digits of a whole number mirrored at the point: 0 ≤ value < 1. */
function radicalInverse(number: number, base: number): number {
  let value = 0;
  let place = 1 / base;
  for (let rest = number; rest > 0; rest = Math.floor(rest / base)) {
    value += (rest % base) * place;
    place /= base;
  }
  return value;
}
