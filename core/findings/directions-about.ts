/** The directions about one of them. */

/** Of the 72 directions those within so many degrees of an angle, in order from 0. */
export function directionsAbout(angle: number, within: number): number[] {
  return Array.from({ length: 72 }, (_, index) => 5 * index).filter((direction) => {
    const off = Math.abs(((((direction - angle + 180) % 360) + 360) % 360) - 180);
    return off <= within;
  });
}
