/** How far a stick must really move until a chain gives output. */
import type { Pair } from '../pad/stick.ts';
import { outputOf } from './output.ts';
import type { ChainFunction } from './run-chain.ts';

/** A stretch of output narrower than this may be missed: chains need not be monotone. */
const SCAN_STEP = 1 / 256;
/** To 2⁻³² of full deflection. */
const HALVINGS = 24;

/**
 * Smallest t ≥ 0 with output ≠ 0 on rest + t·(cos angle, sin angle), a deflection; taken just
 * beyond that edge. 0 where the rest itself leaks, null where nothing comes out up to t = `gate`.
 * A scan by 1/256 finds the first output, halving then its edge.
 */
export function onsetAlong(run: ChainFunction, rest: Pair, angle: number, gate: number): number | null {
  const out = new Float64Array(2);
  const cos = Math.cos((angle * Math.PI) / 180);
  const sin = Math.sin((angle * Math.PI) / 180);
  const answers = (t: number): boolean => outputOf(run, rest.x + t * cos, rest.y + t * sin, out) > 0;
  if (answers(0)) return 0;
  let silent = 0;
  for (let step = 1; silent < gate; step += 1) {
    const t = Math.min(gate, step * SCAN_STEP);
    if (answers(t)) return halve(answers, silent, t);
    silent = t;
  }
  return null;
}

function halve(answers: (t: number) => boolean, from: number, to: number): number {
  let [silent, answering] = [from, to];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (silent + answering) / 2;
    if (answers(middle)) answering = middle;
    else silent = middle;
  }
  return answering;
}

/** Where the ray from the rest meets full tilt, |d| = 1; 0 from a rest beyond it. */
export function fullTilt(rest: Pair, angle: number): number {
  const cos = Math.cos((angle * Math.PI) / 180);
  const sin = Math.sin((angle * Math.PI) / 180);
  const along = rest.x * cos + rest.y * sin;
  const across = rest.x * sin - rest.y * cos;
  return Math.max(0, Math.sqrt(Math.max(0, 1 - across * across)) - along);
}
