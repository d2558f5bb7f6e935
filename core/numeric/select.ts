/** Order statistics without sorting everything. */

/** So few are sorted outright. */
const FEW = 24;
/** A search that has not ended after so many rounds met columns made to slow it: what is left is sorted. */
const MOST_ROUNDS = 64;

/**
 * Reorders `values` between the indices `low` and `high`, both included, so that index k holds what it would hold after sorting
 * that stretch, nothing greater stands before it and nothing smaller behind. No NaN may be among them. Hoare's selection with the
 * median of three; a pass or three on average, n log n at worst.
 */
export function selectAt(values: Float64Array, k: number, low: number, high: number): void {
  let from = low;
  let to = high;
  for (let round = 0; to - from > FEW && round < MOST_ROUNDS; round += 1) {
    const pivot = middleOf(values, from, to);
    let i = from;
    let j = to;
    // Equal ones change places too: a column of one value is halved like any other.
    while (i <= j) {
      while ((values[i] ?? Number.NaN) < pivot) i += 1;
      while ((values[j] ?? Number.NaN) > pivot) j -= 1;
      if (i <= j) {
        const kept = values[i] ?? Number.NaN;
        values[i] = values[j] ?? Number.NaN;
        values[j] = kept;
        i += 1;
        j -= 1;
      }
    }
    if (k > j && k < i) return;
    if (k <= j) to = j;
    else from = i;
  }
  values.subarray(from, to + 1).sort();
}

/** Exchanges the value at index `low` with the least from there to `high`, both included. */
export function leastFirst(values: Float64Array, low: number, high: number): void {
  let at = low;
  for (let i = low + 1; i <= high; i += 1) if ((values[i] ?? Number.NaN) < (values[at] ?? Number.NaN)) at = i;
  const least = values[at] ?? Number.NaN;
  values[at] = values[low] ?? Number.NaN;
  values[low] = least;
}

/** Puts every NaN behind the numbers, as sorting does; answers how many numbers there are. */
export function numbersFirst(values: Float64Array): number {
  let end = values.length;
  for (let i = 0; i < end; i += 1) {
    const value = values[i] ?? Number.NaN;
    if (!Number.isNaN(value)) continue;
    end -= 1;
    values[i] = values[end] ?? Number.NaN;
    values[end] = value;
    i -= 1;
  }
  return end;
}

function middleOf(values: Float64Array, from: number, to: number): number {
  const a = values[from] ?? Number.NaN;
  const b = values[(from + to) >> 1] ?? Number.NaN;
  const c = values[to] ?? Number.NaN;
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
