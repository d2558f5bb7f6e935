/** Thins a long record to what a strip can show, without losing a peak. */

/** A record in time order: microseconds, never decreasing, and values; NaN is a gap. Only the first `length` count. */
export interface Column {
  readonly t: Float64Array;
  readonly v: Float64Array;
  readonly length: number;
}

/** Points that `decimateExtremes` may write for each bucket: first, least, greatest, last and the break at a gap. */
export const POINTS_A_BUCKET = 5;

/**
 * Writes, for each of `buckets` equal slices of the time span, the first, least, greatest and last record in time order,
 * each once, and after a slice that holds a gap one NaN value so that the line breaks there. Times and values go to
 * `out` in turn, which needs room for 2 · POINTS_A_BUCKET · buckets numbers. Answers with the number of points written.
 * No allocation; one pass over the records inside the span.
 */
export function decimateExtremes(
  column: Column,
  span: { readonly from: number; readonly to: number },
  buckets: number,
  out: Float64Array,
): number {
  const { t, v, length } = column;
  const width = span.to - span.from;
  if (!(width > 0) || buckets < 1) return 0;
  let written = 0;
  let bucket = -1;
  let first = -1;
  let least = -1;
  let greatest = -1;
  let last = -1;
  let gapAt = Number.NaN;
  for (let at = firstAtOrAfter(t, length, span.from); ; at += 1) {
    const time = at < length ? (t[at] ?? Number.NaN) : Number.NaN;
    const over = !(time <= span.to);
    const here = over ? buckets : Math.min(buckets - 1, Math.floor(((time - span.from) / width) * buckets));
    if (here !== bucket) {
      if (first >= 0) written = writeOrdered(column, first, least, greatest, last, out, written);
      if (!Number.isNaN(gapAt)) written = write(gapAt, Number.NaN, out, written);
      if (over) return written;
      bucket = here;
      first = least = greatest = last = -1;
      gapAt = Number.NaN;
    }
    const value = v[at] ?? Number.NaN;
    if (Number.isNaN(value)) {
      gapAt = time;
      continue;
    }
    if (first < 0) first = least = greatest = at;
    if (value < (v[least] ?? 0)) least = at;
    if (value > (v[greatest] ?? 0)) greatest = at;
    last = at;
  }
}

function writeOrdered(
  column: Column,
  first: number,
  least: number,
  greatest: number,
  last: number,
  out: Float64Array,
  from: number,
): number {
  const early = Math.min(least, greatest);
  const late = Math.max(least, greatest);
  let written = write(column.t[first] ?? 0, column.v[first] ?? 0, out, from);
  if (early > first) written = write(column.t[early] ?? 0, column.v[early] ?? 0, out, written);
  if (late > early && late > first) written = write(column.t[late] ?? 0, column.v[late] ?? 0, out, written);
  if (last > late) written = write(column.t[last] ?? 0, column.v[last] ?? 0, out, written);
  return written;
}

function write(time: number, value: number, out: Float64Array, written: number): number {
  out[2 * written] = time;
  out[2 * written + 1] = value;
  return written + 1;
}

function firstAtOrAfter(t: Float64Array, length: number, from: number): number {
  let low = 0;
  let high = length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((t[middle] ?? 0) < from) low = middle + 1;
    else high = middle;
  }
  return low;
}
