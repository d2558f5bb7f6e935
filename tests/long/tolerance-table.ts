/**
 * Computes the table of core/numeric/tolerance-table.ts: `node tests/long/tolerance-table.ts [draws] [seed] [n …]`.
 *
 * For n draws of the standard bivariate normal, the region (u − ū)ᵀS⁻¹(u − ū) ≤ c² holds a content of the true
 * distribution that rises with c. c(n) is the 0.95 quantile, over sets of draws, of the c that holds 0.99. Only ū and S
 * matter: ū is normal with variance 1/n and independent of S, which is Wishart with n − 1 degrees of freedom (Bartlett's
 * decomposition), so they are drawn directly; the content is integrated, not drawn.
 */
import { quantileSorted } from '../../core/numeric/quantile.ts';
import { createRandom, type Random } from '../../core/numeric/random.ts';

const CONTENT = 0.99;
const CONFIDENCE = 0.95;
/** Enough for seven digits of the content: the integrand is smooth and, in the angle, periodic. */
const ANGLES = 32;
const RADII = 16;
/** Draws whose c is found outright, to know where the quantile lies; of the others only those near it are. */
const PILOT = 2000;
const NEAR = 0.1;

const radial = gaussLegendre(RADII);
const cosines = Float64Array.from({ length: ANGLES }, (_, k) => Math.cos((2 * Math.PI * k) / ANGLES));
const sines = Float64Array.from({ length: ANGLES }, (_, k) => Math.sin((2 * Math.PI * k) / ANGLES));

export interface TableEntry {
  readonly n: number;
  readonly c: number;
  /** Standard error of the Monte Carlo quantile. */
  readonly standardError: number;
}

export function toleranceEntry(n: number, draws: number, seed: number): TableEntry {
  const random = createRandom(seed + n);
  const pilot = Float64Array.from({ length: Math.min(PILOT, draws) }, () => factorOf(drawSet(n, random))).sort();
  const about = quantileSorted(pilot, CONFIDENCE);
  const low = about * (1 - NEAR);
  const high = about * (1 + NEAR);
  const found = Float64Array.from({ length: draws }, () => {
    const set = drawSet(n, random);
    if (content(low, set) >= CONTENT) return low;
    return content(high, set) < CONTENT ? Infinity : factorOf(set, low, high);
  }).sort();
  const half = 2 * Math.sqrt((CONFIDENCE * (1 - CONFIDENCE)) / draws);
  const spread = quantileSorted(found, Math.min(1, CONFIDENCE + half)) - quantileSorted(found, CONFIDENCE - half);
  return { n, c: quantileSorted(found, CONFIDENCE), standardError: spread / 4 };
}

/** Square roots of the eigenvalues of S, and ū in their frame. */
interface DrawnSet {
  readonly major: number;
  readonly minor: number;
  readonly mx: number;
  readonly my: number;
}

function drawSet(n: number, random: Random): DrawnSet {
  const a = Math.sqrt(chiSquare(n - 1, random));
  const b = Math.sqrt(chiSquare(n - 2, random));
  const off = random.normal();
  const xx = (a * a) / (n - 1);
  const xy = (a * off) / (n - 1);
  const yy = (off * off + b * b) / (n - 1);
  const middle = (xx + yy) / 2;
  const apart = Math.hypot((xx - yy) / 2, xy);
  return {
    major: Math.sqrt(middle + apart),
    minor: Math.sqrt(Math.max(middle - apart, 1e-300)),
    mx: random.normal() / Math.sqrt(n),
    my: random.normal() / Math.sqrt(n),
  };
}

/** The c with which a set holds the content: bisection and regula falsi in turn on the smooth, rising content. */
function factorOf(set: DrawnSet, from = 0, to = 4): number {
  let low = from;
  let high = to;
  while (content(high, set) < CONTENT && high < 1e6) high *= 2;
  let below = content(low, set) - CONTENT;
  let above = content(high, set) - CONTENT;
  for (let step = 0; step < 60 && high - low > 1e-6 * high; step += 1) {
    const c = step % 3 === 2 ? (low + high) / 2 : low - (below * (high - low)) / (above - below);
    const value = content(c, set) - CONTENT;
    if (value < 0) {
      low = c;
      below = value;
      above /= 2;
    } else {
      high = c;
      above = value;
      below /= 2;
    }
  }
  return high;
}

/** Content of the ellipse with semi-axes c·major, c·minor about ū under the standard normal, in polar form about its middle. */
function content(c: number, { major, minor, mx, my }: DrawnSet): number {
  let sum = 0;
  for (let k = 0; k < ANGLES; k += 1) {
    const x = major * (cosines[k] ?? 0);
    const y = minor * (sines[k] ?? 0);
    // Beyond this radius of the true distribution nothing is left worth counting.
    const end = Math.min(c, 9 / Math.max(Math.sqrt(x * x + y * y), 1e-12));
    for (const [node, weight] of radial) {
      const r = node * end;
      const px = mx + r * x;
      const py = my + r * y;
      sum += weight * end * r * Math.exp(-(px * px + py * py) / 2);
    }
  }
  return (sum * major * minor) / ANGLES;
}

function chiSquare(degrees: number, random: Random): number {
  let sum = 0;
  for (let k = 0; k < degrees; k += 1) sum += random.normal() ** 2;
  return sum;
}

/** Nodes and weights of Gauss and Legendre on [0, 1], by Newton's method on the polynomial. */
function gaussLegendre(points: number): (readonly [number, number])[] {
  return Array.from({ length: points }, (_, k) => {
    let x = Math.cos((Math.PI * (k + 0.75)) / (points + 0.5));
    for (let step = 0; step < 100; step += 1) {
      const [value, slope] = legendre(points, x);
      const next = x - value / slope;
      if (Math.abs(next - x) < 1e-15) break;
      x = next;
    }
    const [, slope] = legendre(points, x);
    return [(1 + x) / 2, 1 / ((1 - x * x) * slope * slope)] as const;
  });
}

function legendre(n: number, x: number): [number, number] {
  let before = 1;
  let now = x;
  for (let k = 2; k <= n; k += 1) [before, now] = [now, ((2 * k - 1) * x * now - (k - 1) * before) / k];
  return [now, (n * (x * now - before)) / (x * x - 1)];
}

if (process.argv[1] === import.meta.filename) {
  const [draws = 100_000, seed = 20_261_125, ...wanted] = process.argv.slice(2).map(Number);
  const small = Array.from({ length: 29 }, (_, index) => index + 12);
  const sizes = wanted.length > 0 ? wanted : [...small, 45, 50, 60, 80, 100, 150, 200, 300];
  for (const n of sizes) {
    const { c, standardError } = toleranceEntry(n, draws, seed);
    console.log(`  [${n}, ${c.toFixed(4)}, ${standardError.toFixed(4)}],`);
  }
}
