/**
 * Where a rising function crosses zero between `low` and `high`, to the last digit: halves until no number lies between.
 * The function must be below zero at `low` and not at `high`; else the answer is the end where that fails.
 */
export function bisectRising(f: (x: number) => number, low: number, high: number): number {
  let below = low;
  let above = high;
  for (;;) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above) return above;
    if (f(middle) < 0) below = middle;
    else above = middle;
  }
}
