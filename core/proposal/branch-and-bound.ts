/**
 * Exact minimum of a function of a few whole numbers by branch and bound: boxes are halved, and a box is given up only when
 * its lower bound is above the best value seen, so that no local minimum can hold the search.
 */

export interface WholeProblem {
  /** Inclusive ranges, all at least 1. */
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** Never above the value anywhere in the box; `Infinity` where nothing in the box is allowed. */
  bound(low: readonly number[], high: readonly number[]): number;
  /** `Infinity` where the point is not allowed. */
  value(point: readonly number[]): number;
  /** Among equal values the point with the smaller change is taken. */
  change(point: readonly number[]): number;
  /** A good guess makes the search short; it need not be in range. */
  readonly guess: readonly number[];
}

interface Box {
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly bound: number;
}

/** Values that differ by less are equal: rounding must not decide between two mappings. */
const EQUAL = 1e-12;

/** The minimum's point, or null when none is allowed. The work grows with the flatness of the function, not with the ranges. */
export function minimiseWhole(problem: WholeProblem): readonly number[] | null {
  if (problem.low.some((low, index) => low > (problem.high[index] ?? low))) return null;
  let best: readonly number[] | null = null;
  let bestValue = Infinity;
  let bestChange = Infinity;

  function consider(point: readonly number[]): void {
    const value = problem.value(point);
    if (!Number.isFinite(value) || value > bestValue + EQUAL) return;
    const change = problem.change(point);
    if (value >= bestValue - EQUAL && change >= bestChange) return;
    best = point;
    bestValue = Math.min(value, bestValue);
    bestChange = change;
  }

  consider(problem.guess.map((value, index) => clamp(value, problem.low[index] ?? 1, problem.high[index] ?? 1)));
  const stack: Box[] = [{ low: problem.low, high: problem.high, bound: problem.bound(problem.low, problem.high) }];
  for (let box = stack.pop(); box !== undefined; box = stack.pop()) {
    if (box.bound === Infinity || box.bound > bestValue + EQUAL) continue;
    const side = widestSide(box);
    if (side < 0) {
      consider(box.low);
      continue;
    }
    consider(box.low.map((low, index) => Math.floor((low + (box.high[index] ?? low)) / 2)));
    const [lower, upper] = halve(problem, box, side);
    // The more promising half is looked at first.
    if (lower.bound < upper.bound) stack.push(upper, lower);
    else stack.push(lower, upper);
  }
  return best;
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, Math.round(value)));
}

/** The side with the largest ratio of its ends, or −1 for a single point. */
function widestSide(box: Box): number {
  let widest = -1;
  let ratio = 1;
  for (let side = 0; side < box.low.length; side += 1) {
    const own = (box.high[side] ?? 1) / (box.low[side] ?? 1);
    if (own > ratio) {
      ratio = own;
      widest = side;
    }
  }
  return widest;
}

function halve(problem: WholeProblem, box: Box, side: number): [Box, Box] {
  const middle = Math.floor(((box.low[side] ?? 0) + (box.high[side] ?? 0)) / 2);
  const lowerHigh = box.high.map((value, index) => (index === side ? middle : value));
  const upperLow = box.low.map((value, index) => (index === side ? middle + 1 : value));
  return [
    { low: box.low, high: lowerHigh, bound: problem.bound(box.low, lowerHigh) },
    { low: upperLow, high: box.high, bound: problem.bound(upperLow, box.high) },
  ];
}
