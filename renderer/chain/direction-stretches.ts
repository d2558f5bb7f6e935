/** Directions in words: neighbours are one stretch. */

/** Multiples of 5 in [0, 360), in any order → e.g. `40° to 55°, 180°`; a stretch over 0° is one. */
export function sayStretches(directions: readonly number[]): string {
  if (directions.length >= 72) return 'every direction';
  const isIn = new Set(directions);
  const starts = directions.filter((angle) => !isIn.has((angle + 355) % 360)).toSorted((a, b) => a - b);
  return starts
    .map((from) => {
      let to = from;
      while (isIn.has((to + 5) % 360)) to = (to + 5) % 360;
      return to === from ? `${from}°` : `${from}° to ${to}°`;
    })
    .join(', ');
}
