/** What is known of a share of which so many were seen in a draw. */
import { betaQuantile } from '../../core/numeric/beta-quantile.ts';

export interface Count {
  readonly found: number;
  readonly of: number;
}

/** Exact 95 % interval of the share, 2.5 % on either side (Clopper and Pearson, Biometrika 26, 1934); all of [0, 1] where nothing was drawn. */
export function exactInterval95({ found, of }: Count): { readonly low: number; readonly high: number } {
  return {
    low: found === 0 ? 0 : betaQuantile(0.025, found, of - found + 1),
    high: found === of ? 1 : betaQuantile(0.975, found + 1, of - found),
  };
}
