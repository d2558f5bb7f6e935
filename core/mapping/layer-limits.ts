/** What the layer that a mapping is to be stored in can hold. */
export interface LayerLimits {
  /** Whole counts only. */
  readonly whole: boolean;
  readonly least: number;
  readonly greatest: number;
}
