/** Flat point sets for properties, and the moves under which circles must not care or must follow. */
import fc from 'fast-check';

/** Counts of a small field: many duplicates, many on one line. */
export const latticePoints = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 })), { minLength: 1, maxLength: 14 })
  .map((points) => points.flat());

const fraction = fc.integer({ min: -1_000_000, max: 1_000_000 }).map((value) => value / 1_000_000);

/** Points all around a circle of radius 1, off it by up to 15 %; no angle free for more than 80°. */
export const ringPoints = fc.array(fc.tuple(fraction, fraction), { minLength: 9, maxLength: 16 }).map((draws) =>
  draws.flatMap(([turn, off], i) => {
    // At most a quarter of the way to the neighbour: gaps stay below 1.5 times 40°.
    const angle = ((i + turn / 4) * 2 * Math.PI) / draws.length;
    const radius = 1 + 0.15 * off;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  }),
);

/** A move of the plane: turn, then scale, then shift. */
export interface Move {
  readonly angle: number;
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export const anyMove = fc.record({
  angle: fraction.map((value) => 180 * value),
  scale: fraction.map((value) => 10 ** (3 * value)),
  x: fraction.map((value) => 5000 * value),
  y: fraction.map((value) => 5000 * value),
});

export function movePoints(points: readonly number[], { angle, scale, x, y }: Move): number[] {
  const cosine = scale * Math.cos((angle * Math.PI) / 180);
  const sine = scale * Math.sin((angle * Math.PI) / 180);
  return pairsOf(points).flatMap(([px, py]) => [x + cosine * px - sine * py, y + sine * px + cosine * py]);
}

/** The same set told differently: backwards, and every third point twice. */
export function retellPoints(points: readonly number[]): number[] {
  const pairs = pairsOf(points).toReversed();
  return [...pairs, ...pairs.filter((_, i) => i % 3 === 0)].flat();
}

export function pairsOf(points: readonly number[]): (readonly [number, number])[] {
  return Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i]!, points[2 * i + 1]!] as const);
}
