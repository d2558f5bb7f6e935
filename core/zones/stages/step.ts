/** One compiled stage: changes the vector (x at 0, y at 1) in place and allocates nothing. */
export type Step = (v: Float64Array) => void;

/** The magnitude of the vector; unlike `Math.hypot` exact on the axes and cheap. */
export function magnitude(v: Float64Array): number {
  const x = v[0] ?? 0;
  const y = v[1] ?? 0;
  return Math.sqrt(x * x + y * y);
}

/** Multiplies both parts; a factor of 0 leaves a plain zero. */
export function scale(v: Float64Array, factor: number): void {
  v[0] = (v[0] ?? 0) * factor + 0;
  v[1] = (v[1] ?? 0) * factor + 0;
}
