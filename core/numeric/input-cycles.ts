/** Readings of an instrument at the same inputs, gone through upwards and downwards several times. */
export interface InputCycles {
  /** One row a pass, one reading an input, in the order of the inputs. */
  readonly ascending: readonly (readonly number[])[];
  readonly descending: readonly (readonly number[])[];
}

/** In the unit of the readings; divided by the span they are the percentages of a data sheet. */
export interface CycleErrors {
  /** Largest difference between the ascending and the descending reading of one pass at one input. */
  readonly hysteresis: number;
  /** Largest difference among the ascending readings of one input, or among the descending ones. */
  readonly repeatability: number;
}

/**
 * Hysteresis and repeatability of input cycles. Null without a whole pass each way, with unequal numbers of passes or inputs, or readings
 * that are no number; `repeatability` of a single pass is 0: take three pairs at least.
 * Source: 43 CFR 3175.135 (definitions); IEC 61298-2 defines both alike (from memory).
 */
export function cycleErrors({ ascending, descending }: InputCycles): CycleErrors | null {
  const inputs = ascending[0]?.length ?? 0;
  const rows = [...ascending, ...descending];
  const isWhole = rows.every((row) => row.length === inputs && row.every((reading) => Number.isFinite(reading)));
  if (inputs === 0 || ascending.length !== descending.length || !isWhole) return null;
  const apart = ascending.flatMap((row, k) => row.map((up, i) => Math.abs(up - (descending[k]?.[i] ?? NaN))));
  const spread = [ascending, descending].flatMap((passes) =>
    Array.from({ length: inputs }, (_, i) => rangeOf(passes.map((row) => row[i] ?? NaN))),
  );
  return { hysteresis: Math.max(...apart), repeatability: Math.max(...spread) };
}

function rangeOf(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
