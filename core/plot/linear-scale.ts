/** A straight map from values to picture units and back. */

export interface LinearScale {
  readonly domain: readonly [number, number];
  readonly range: readonly [number, number];
  /** Picture position of a value; a domain without width maps everything to the middle of the range. */
  at(value: number): number;
  /** Value at a picture position. */
  invert(position: number): number;
}

/**
 * Maps `domain` onto `range`; either may run backwards, which is how a count that grows downwards is drawn with up
 * on top. Values outside the domain go outside the range: nothing is clamped silently.
 */
export function linearScale(domain: readonly [number, number], range: readonly [number, number]): LinearScale {
  const width = domain[1] - domain[0];
  const length = range[1] - range[0];
  return {
    domain,
    range,
    at: (value) => (width === 0 ? range[0] + length / 2 : range[0] + ((value - domain[0]) / width) * length),
    invert: (position) => (length === 0 ? domain[0] + width / 2 : domain[0] + ((position - range[0]) / length) * width),
  };
}
