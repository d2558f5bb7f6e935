/** The direction in which the stick must move most until a zone gives output. */

export interface Extreme {
  readonly angle: number;
  readonly value: number;
}

/** The largest onset and its direction; null where no direction has one. */
export function largestOnset(
  onset: readonly { readonly angle: number; readonly deflection: number | null }[] | null,
): Extreme | null {
  let most: Extreme | null = null;
  for (const { angle, deflection } of onset ?? [])
    if (deflection !== null && (most === null || deflection > most.value)) most = { angle, value: deflection };
  return most;
}
