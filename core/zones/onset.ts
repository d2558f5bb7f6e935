/** How far a stick must really move until a chain gives output. */
import type { Pair } from '../pad/stick.ts';
import { outputOf } from './output.ts';
import type { ChainFunction } from './run-chain.ts';

/** A stretch of output narrower than this may be missed: chains need not be monotone. */
const SCAN_STEP = 1 / 256;
/** To so much of full deflection an edge is found. */
const FINEST = 2 ** -32;
/** Where the disc that is known to be silent ends, the zone itself ends mostly: so near it is looked first. */
const JUST_BEYOND = 4e-9;

/**
 * Smallest t ≥ 0 with output ≠ 0 on rest + t·(cos angle, sin angle), a deflection; taken just
 * beyond that edge. 0 where the rest itself leaks, null where nothing comes out up to t = `gate`.
 * A scan by 1/256 finds the first output, halving then its edge. `silentWithin` is a radius within which nothing comes out: the scan
 * leaves that disc out.
 */
export function onsetAlong(
  run: ChainFunction,
  rest: Pair,
  angle: number,
  gate: number,
  silentWithin = -1,
): number | null {
  const out = new Float64Array(2);
  const cos = Math.cos((angle * Math.PI) / 180);
  const sin = Math.sin((angle * Math.PI) / 180);
  const answers = (t: number): boolean => outputOf(run, rest.x + t * cos, rest.y + t * sin, out) > 0;
  if (answers(0)) return 0;
  const edge = leaves(rest, cos, sin, silentWithin);
  const beyond = leaves(rest, cos, sin, silentWithin + JUST_BEYOND);
  if (edge > 0 && beyond <= gate && answers(beyond)) return halve(answers, edge, beyond);
  const skipped = Math.max(0, Math.floor(Math.min(gate, edge) / SCAN_STEP) - 1);
  let silent = skipped * SCAN_STEP;
  for (let step = skipped + 1; silent < gate; step += 1) {
    const t = Math.min(gate, step * SCAN_STEP);
    if (answers(t)) return halve(answers, silent, t);
    silent = t;
  }
  return null;
}

/** Where a ray that starts in the disc |d| ≤ radius leaves it; 0 where it starts outside. */
function leaves(rest: Pair, cos: number, sin: number, radius: number): number {
  const startsInside = radius > 0 && rest.x * rest.x + rest.y * rest.y < radius * radius;
  return startsInside ? farEnd(rest, cos, sin, radius) : 0;
}

/** The further of the two crossings of a line with a circle about 0; the nearest point where it crosses none. */
function farEnd(rest: Pair, cos: number, sin: number, radius: number): number {
  const along = rest.x * cos + rest.y * sin;
  const across = rest.x * sin - rest.y * cos;
  return Math.sqrt(Math.max(0, radius * radius - across * across)) - along;
}

function halve(answers: (t: number) => boolean, from: number, to: number): number {
  let [silent, answering] = [from, to];
  while (answering - silent > FINEST) {
    const middle = (silent + answering) / 2;
    if (answers(middle)) answering = middle;
    else silent = middle;
  }
  return answering;
}

/** Where the ray from the rest meets full tilt, |d| = 1; 0 from a rest beyond it. */
export function fullTilt(rest: Pair, angle: number): number {
  return Math.max(0, farEnd(rest, Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180), 1));
}
