/** Digits of the coarse order: 2 × 11 bits, some millions of places along x. */
const digitBits = 11;
const places = 2 ** (2 * digitBits);

/** Runs of the coarse order that are longer than this are sorted by comparing; shorter ones by insertion. */
const shortRun = 16;

/**
 * Distinct points in order of x, then y. `points` is flat. A radix sort along x puts them nearly right, whatever their number; what it
 * leaves together is compared: n log n at worst.
 */
export function sortPoints(points: ArrayLike<number>): Float64Array {
  const n = Math.floor(points.length / 2);
  const xs = new Float64Array(n);
  const ys = new Float64Array(n);
  let least = Infinity;
  let greatest = -Infinity;
  for (let i = 0; i < n; i += 1) {
    const x = points[2 * i] ?? NaN;
    xs[i] = x;
    ys[i] = points[2 * i + 1] ?? NaN;
    if (x < least) least = x;
    if (x > greatest) greatest = x;
  }
  // Rounding keeps the order: places never fall where x rises.
  const scale = (places - 1) / (greatest - least);
  const keys = new Uint32Array(n);
  const given = new Uint32Array(n);
  for (let i = 0; i < n; i += 1) {
    keys[i] = ((xs[i] ?? NaN) - least) * scale;
    given[i] = i;
  }
  const order = orderByDigit(keys, orderByDigit(keys, given, 0), digitBits);
  orderRuns(order, keys, (a, b) => (xs[a] ?? NaN) - (xs[b] ?? NaN) || (ys[a] ?? NaN) - (ys[b] ?? NaN));
  const sorted = new Float64Array(2 * n);
  let size = 0;
  for (let k = 0; k < n; k += 1) {
    const i = order[k] ?? 0;
    const x = xs[i] ?? NaN;
    const y = ys[i] ?? NaN;
    if (size > 0 && sorted[size - 2] === x && sorted[size - 1] === y) continue;
    sorted[size] = x;
    sorted[size + 1] = y;
    size += 2;
  }
  return sorted.slice(0, size);
}

/** The order made ascending in the digit of the keys that begins at bit `shift`, equal ones keeping their place. */
function orderByDigit(keys: Uint32Array, order: Uint32Array, shift: number): Uint32Array {
  const mask = 2 ** digitBits - 1;
  const begins = new Uint32Array(mask + 2);
  for (let i = 0; i < keys.length; i += 1) {
    const after = (((keys[i] ?? 0) >>> shift) & mask) + 1;
    begins[after] = (begins[after] ?? 0) + 1;
  }
  for (let digit = 1; digit <= mask; digit += 1) begins[digit] = (begins[digit] ?? 0) + (begins[digit - 1] ?? 0);
  const ordered = new Uint32Array(order.length);
  for (let k = 0; k < order.length; k += 1) {
    const i = order[k] ?? 0;
    const digit = ((keys[i] ?? 0) >>> shift) & mask;
    const place = begins[digit] ?? 0;
    ordered[place] = i;
    begins[digit] = place + 1;
  }
  return ordered;
}

/** Sorts each run of equal keys. */
function orderRuns(order: Uint32Array, keys: Uint32Array, compare: (a: number, b: number) => number): void {
  const keyAt = (k: number): number | undefined => keys[order[k] ?? 0];
  for (let from = 0; from < order.length;) {
    let to = from + 1;
    while (to < order.length && keyAt(to) === keyAt(from)) to += 1;
    if (to - from > shortRun) order.subarray(from, to).sort(compare);
    else for (let k = from + 1; k < to; k += 1) insert(order, from, k, compare);
    from = to;
  }
}

function insert(order: Uint32Array, from: number, k: number, compare: (a: number, b: number) => number): void {
  const moved = order[k] ?? 0;
  let at = k;
  for (; at > from && compare(order[at - 1] ?? 0, moved) > 0; at -= 1) order[at] = order[at - 1] ?? 0;
  order[at] = moved;
}
