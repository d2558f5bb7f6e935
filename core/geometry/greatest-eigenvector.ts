export type Triple = readonly [number, number, number];

/** Three rows. */
export type Matrix = readonly [Triple, Triple, Triple];

/**
 * Eigenvector of the greatest eigenvalue of a 3 × 3 matrix whose eigenvalues are all real, of length 1.
 * The eigenvalue comes from the characteristic cubic in its trigonometric form, the vector by inverse iteration, which
 * makes up for what the cubic loses. Null where the numbers run out of range.
 */
export function greatestEigenvector(matrix: Matrix): Triple | null {
  const inverse = adjugate(matrix, greatestEigenvalue(matrix));
  let vector: Triple = [1, 0.5, 1];
  for (let round = 0; round < 4; round += 1) {
    const next: Triple = [dot(inverse[0], vector), dot(inverse[1], vector), dot(inverse[2], vector)];
    const length = Math.hypot(...next);
    if (!(length > 0 && Number.isFinite(length))) return null;
    vector = [next[0] / length, next[1] / length, next[2] / length];
  }
  return vector;
}

function greatestEigenvalue([[a, b, c], [d, e, f], [g, h, i]]: Matrix): number {
  const third = (a + e + i) / 3;
  const p = ((a - e) ** 2 + (e - i) ** 2 + (i - a) ** 2) / 18 + (b * d + c * g + f * h) / 3;
  const [x, y, z] = [a - third, e - third, i - third];
  const half = (x * (y * z - f * h) - b * (d * z - f * g) + c * (d * h - y * g)) / 2;
  if (!(p > 0)) return third;
  const cosine = Math.min(1, Math.max(-1, half / p ** 1.5));
  return third + 2 * Math.sqrt(p) * Math.cos(Math.acos(cosine) / 3);
}

/**
 * Adjugate of (matrix − shift·1): its inverse but for a factor, and without the division that fails where the shift is exact.
 */
function adjugate([[a, b, c], [d, e, f], [g, h, i]]: Matrix, shift: number): Matrix {
  const [p, q, r] = [a - shift, e - shift, i - shift];
  return [
    [q * r - f * h, c * h - b * r, b * f - c * q],
    [f * g - d * r, p * r - c * g, c * d - p * f],
    [d * h - q * g, b * g - p * h, p * q - b * d],
  ];
}

export function dot(a: Triple, b: Triple): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
