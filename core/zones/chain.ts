/** Zones and curves in the order a signal meets them, as a chain file writes them. */

export type Stage = (
  | { readonly zone: 'axial'; readonly inner: number; readonly outer?: number; readonly rescale?: boolean }
  | { readonly zone: 'radial'; readonly inner: number }
  | { readonly zone: 'scaledRadial'; readonly inner: number; readonly outer?: number }
  | {
      readonly zone: 'sector';
      readonly blend: boolean;
      readonly sectors: readonly { readonly inner: number; readonly outer: number }[];
    }
  | { readonly zone: 'slopedAxial'; readonly inner: number; readonly slope: number }
  | { readonly minimumOutput: number }
  | { readonly curve: { readonly exponent: number } | { readonly points: readonly (readonly [number, number])[] } }
  | { readonly limit: 'axis' | 'radial' }
  | { readonly shape: 'discToSquare' | 'squareToDisc'; readonly map: 'elliptical' | 'squircular' | 'radial' }
  | { readonly quantise: { readonly bits: number; readonly levels: 'signed' | 'even' } }
  | { readonly digital: { readonly ways: 4 | 8; readonly threshold: number } }
) & { readonly off?: boolean };

export interface Chain {
  readonly kind: 'stickwright-chain';
  readonly version: 1;
  readonly name: string;
  readonly stages: readonly Stage[];
  /** Output magnitude a consumer must see to respond fully, or null. */
  readonly needs: number | null;
}

/** The push that a zone swallows, a deflection, over all directions. */
export interface ZoneCost {
  readonly least: number;
  readonly largest: number;
}

/** What a chain does with a measured stick, as `zones` prints it. */
export interface ZoneAnswer {
  readonly leaks: {
    readonly releases: number;
    readonly leaking: number;
    readonly share: number;
    readonly upperBound95: number;
    readonly largestOutput: number;
  } | null;
  readonly hides: string | null;
  readonly smallestZone: {
    readonly observed: number;
    readonly tolerance99: number | null;
    readonly costs: { readonly observed: ZoneCost; readonly tolerance99: ZoneCost | null };
  } | null;
  /** Deflection null where the chain gives nothing before the gate. */
  readonly onset: readonly { readonly angle: number; readonly deflection: number | null }[] | null;
  readonly unevenness: number | null;
  /** Output null where no turn has a reading. */
  readonly gate:
    readonly { readonly angle: number; readonly output: number | null; readonly covered: boolean }[] | null;
  readonly unreached: readonly number[] | null;
}
