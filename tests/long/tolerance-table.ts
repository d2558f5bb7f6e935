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
/** Steps of the angle. The sums with 64 and with 256 differ by less than 1e-9 for any set that matters at n ≥ 12. */
const ANGLES = 64;
/** Draws whose c is found outright, to know where the quantile lies; of the others only those near it are. */
const PILOT = 2000;
const NEAR = 0.1;

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

/**
 * Content of the ellipse with semi-axes c·major, c·minor about ū under the standard normal. In polar form about the middle of the
 * normal the way outwards is integrated in closed form: content = 1 − mean over the angle of exp(−ρ²/2), ρ being the
 * distance to the ellipse; in the angle the sum over equal steps converges faster than any power. 0 where the middle lies outside:
 * the content is then below one half.
 */
function content(c: number, { major, minor, mx, my }: DrawnSet): number {
  const a = 1 / (c * major) ** 2;
  const b = 1 / (c * minor) ** 2;
  const room = 1 - mx * mx * a - my * my * b;
  if (!(room > 0)) return 0;
  let outside = 0;
  for (let k = 0; k < ANGLES; k += 1) {
    const cosine = cosines[k] ?? NaN;
    const sine = sines[k] ?? NaN;
    const along = cosine * mx * a + sine * my * b;
    const across = cosine * cosine * a + sine * sine * b;
    const distance = (along + Math.sqrt(along * along + across * room)) / across;
    outside += Math.exp((-distance * distance) / 2);
  }
  return 1 - outside / ANGLES;
}

/** Chi-square with `degrees` of freedom as twice a gamma variate: Marsaglia and Tsang, ACM TOMS 26 (2000) 363 (from memory). */
function chiSquare(degrees: number, random: Random): number {
  const d = degrees / 2 - 1 / 3;
  const step = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = random.normal();
    const v = (1 + step * z) ** 3;
    if (v > 0 && Math.log(1 - random.next()) < (z * z) / 2 + d * (1 - v + Math.log(v))) return 2 * d * v;
  }
}

if (process.argv[1] === import.meta.filename) {
  const [draws = 2_000_000, seed = 20_261_125, ...wanted] = process.argv.slice(2).map(Number);
  const small = Array.from({ length: 29 }, (_, index) => index + 12);
  const sizes =
    wanted.length > 0 ? wanted : [...small, 45, 50, 60, 70, 80, 90, 100, 125, 150, 175, 200, 250, 300, 400, 1000, 3000];
  for (const n of sizes) {
    const { c, standardError } = toleranceEntry(n, draws, seed);
    console.log(`  [${n}, ${c.toFixed(4)}, ${standardError.toFixed(4)}],`);
  }
}
