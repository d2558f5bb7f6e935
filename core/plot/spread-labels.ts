/** Keeps labels in a row from lying on each other. */

/** A label that wants its middle at `at`, `size` long. */
export interface RowLabel {
  readonly at: number;
  readonly size: number;
}

/**
 * Middles for labels in a row so that none overlap and all stay between `from` and `to`, moved as little as one pass
 * each way allows. Order along the row is kept. Where they cannot all fit they are packed from `from` on.
 */
export function spreadLabels(labels: readonly RowLabel[], from: number, to: number, gap = 0): number[] {
  const order = labels.map((_, index) => index).sort((a, b) => (labels[a]?.at ?? 0) - (labels[b]?.at ?? 0));
  const middles = labels.map((label) => label.at);
  let edge = to + gap;
  for (const index of [...order].reverse()) {
    const half = (labels[index]?.size ?? 0) / 2;
    middles[index] = Math.min(middles[index] ?? 0, edge - gap - half);
    edge = (middles[index] ?? 0) - half;
  }
  edge = from - gap;
  for (const index of order) {
    const half = (labels[index]?.size ?? 0) / 2;
    middles[index] = Math.max(middles[index] ?? 0, edge + gap + half);
    edge = (middles[index] ?? 0) + half;
  }
  return middles;
}

/** Width that a text takes at most in the shipped typeface with tabular figures, in the same units as the letter size. */
export function textWidth(text: string, letter: number): number {
  return text.length * letter * 0.6;
}
