/** Round numbers along a scale. */

export interface Ticks {
  readonly step: number;
  /** Decimals that write every value of the step exactly. */
  readonly decimals: number;
  /** Multiples of the step within the span, both ends included, ascending. */
  readonly values: readonly number[];
}

/** Ticks at 1, 2 or 5 times a power of ten: the smallest such step that gives at most `most` (2 or more) ticks. */
export function decimalTicks(from: number, to: number, most: number): Ticks {
  const [low, high] = from <= to ? [from, to] : [to, from];
  if (!(high > low)) return { step: 1, decimals: 0, values: [] };
  let power = Math.floor(Math.log10((high - low) / most)) - 1;
  for (;;) {
    for (const digit of [1, 2, 5]) {
      // Dividing by a whole power keeps 0.3 from becoming 0.30000000000000004.
      const ticks = multiples(low, high, digit, power);
      if (ticks.length <= most) return { step: scaled(digit, power), decimals: Math.max(0, -power), values: ticks };
    }
    power += 1;
  }
}

/** Ticks for raw counts: the smallest power of two, at least 1, that gives at most `most` (2 or more) ticks. */
export function countTicks(from: number, to: number, most: number): Ticks {
  const [low, high] = from <= to ? [from, to] : [to, from];
  let step = 1;
  while (Math.floor(high / step) - Math.ceil(low / step) + 1 > most) step *= 2;
  const values: number[] = [];
  for (let n = Math.ceil(low / step); n * step <= high; n += 1) values.push(n * step);
  return { step, decimals: 0, values };
}

function scaled(whole: number, power: number): number {
  const value = power < 0 ? whole / 10 ** -power : whole * 10 ** power;
  return value === 0 ? 0 : value;
}

function multiples(low: number, high: number, digit: number, power: number): number[] {
  const step = scaled(digit, power);
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  const values: number[] = [];
  for (let n = first; n <= last && values.length < 1000; n += 1) values.push(scaled(n * digit, power));
  return values;
}
