/** Ways in which the signal of a sound sensor does not arrive. */

/** What the converter sees meanwhile: the middle of its range, an end of it, or whatever charge is left on the line. */
export type Goes = 'middle' | 'low' | 'high' | 'anywhere';
export type Axes = 'x' | 'y' | 'both';

export type Lost =
  /** While the stick presses on the rim within a sector; on a share of the visits only where that is below 1. */
  | {
      readonly kind: 'sector';
      readonly toward: number;
      readonly width: number;
      readonly share: number;
      readonly axes: Axes;
      readonly goes: Goes;
    }
  /** Where the wiper stands on a bare place of the track; place and width in shares of the half travel. */
  | {
      readonly kind: 'spot';
      readonly axis: 'x' | 'y';
      readonly at: number;
      readonly width: number;
      readonly goes: Goes;
    }
  /** Where the wiper stands on a worn stretch its contact changes by so much (σ, share of the half travel). */
  | {
      readonly kind: 'worn';
      readonly axis: 'x' | 'y';
      readonly at: number;
      readonly width: number;
      readonly unsteady: number;
    }
  /** Once in so many reports, for 1 to 40 ms. */
  | { readonly kind: 'contact'; readonly once: number; readonly axes: Axes; readonly goes: Goes }
  /** One report of so many holds a value of one axis that was never there. */
  | { readonly kind: 'spike'; readonly once: number };
