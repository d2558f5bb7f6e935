/** The parameters that dead-zone shapes share: fractions of full deflection, 0 ≤ inner < outer ≤ 1.5. */
import { z } from 'zod';

/** Where `outer` is not written. */
export const USUAL_OUTER = 1;

const LARGEST = 1.5;

export const innerSchema = z.number().min(0).lt(LARGEST);
export const outerSchema = z.number().gt(0).max(LARGEST);
export const offSchema = z.boolean().exactOptional();

/** For `refine`: refuses an inner edge that is not within the outer one. */
export function isInnerWithin(edges: { inner: number; outer?: number }): boolean {
  return edges.inner < (edges.outer ?? USUAL_OUTER);
}

export const INNER_WITHIN = { path: ['inner'], message: 'must be less than outer' };

/** The rescaled size of a part beyond the inner edge: min(1, (size − inner)/(outer − inner)); 0 inside, which means ≤. */
export function rescale(size: number, inner: number, outer: number): number {
  return size <= inner ? 0 : Math.min(1, (size - inner) / (outer - inner));
}
