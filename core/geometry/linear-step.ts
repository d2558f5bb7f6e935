import { type Contact, findWorst, sampleOf, startColumns, viewFrom } from './linear-view.ts';
import type { Band, BandPoints } from './radial-band.ts';
import { SimplexBasis } from './simplex-basis.ts';

/** Outcome of the linear programme: the move with the least linearised width, and that width. */
export interface LinearStep {
  readonly x: number;
  readonly y: number;
  /** A lower bound of the linearised width over all moves, tight when the programme came to its end; infinite where no move stays inside. */
  readonly bound: number;
  readonly contacts: readonly Contact[];
}

/** Pivots are 3 to 25; a run that does not end by then still gives a valid bound. */
const pivotLimit = 200;

/** Points on a lattice tie: pivots that gain nothing may go round in a circle. After so many of them the programme ends. */
const idleLimit = 12;

/**
 * Least width of the band when distances are taken as linear in the move δ of the centre, δ such that it stays inside the edges
 * (`hullEdges`): minimise maxᵢ(rᵢ − uᵢ·δ) over outer points minus minⱼ(rⱼ − uⱼ·δ) over inner ones, u being unit vectors from the
 * centre (x, y) to the points. Since rᵢ − uᵢ·δ ≤ |pᵢ − c − δ| ≤ rᵢ − uᵢ·δ + δ²/2rᵢ, the true width after a move of length
 * ρ ≤ `reach` is at least `bound` − ρ²/(2·least distance). Moves are held to about `reach` by three limits that cut no true
 * answer within it.
 *
 * Method: simplex on the dual, max Σλr − Σμr − Σν·depth with Σλ = Σμ = 1, Σλu − Σμu + Σν·normal = 0, weights ≥ 0: four rows, any
 * number of columns; each pass over the points takes in the one that is violated most. All weights on the way are
 * feasible, so each stage is a bound already (weak duality).
 */
export function linearStep(
  points: BandPoints,
  edges: Float64Array,
  band: Band,
  x: number,
  y: number,
  reach: number,
): LinearStep {
  const view = viewFrom(points, edges, x, y);
  const sample = sampleOf(view);
  let among = sample ?? view;
  const basis = new SimplexBasis(startColumns(view, band.least + 3 * reach));
  let prices = basis.prices();
  let value = -Infinity;
  for (let round = 0, idle = 0; round < pivotLimit && idle < idleLimit; round += 1) {
    idle = basis.value() > value + 1e-15 ? 0 : idle + 1;
    value = Math.max(value, basis.value());
    let entering = findWorst(among, prices);
    // The sample is satisfied: from here on all points are asked.
    if (entering === null && among !== view) entering = findWorst((among = view), prices);
    if (entering === null) break;
    if (!basis.enter(entering)) return { x: 0, y: 0, bound: Infinity, contacts: [] };
    prices = basis.prices();
  }
  const contacts = basis.tags().filter((tag) => tag !== null);
  return { x: prices[2], y: prices[3], bound: basis.value(), contacts };
}
