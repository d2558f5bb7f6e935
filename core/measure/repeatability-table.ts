/**
 * Standard deviation of each measure over 10 surveys of one simulated pad with 12-bit counts, seeds from 20261125 on, pooled over
 * both sticks. Positions and lengths in counts, skew in degrees, the rest fractions. Made by tests/long/gauge-study.ts.
 */
export const repeatabilityTable = {
  restX: 0.525,
  restY: 0.335,
  offset: 0.000255,
  toleranceRadius: 0.00138,
  leastReach: 0.000132,
  meanRadialError: 0.000115,
  ellipseMajor: 0.0704,
  ellipseMinor: 0.0715,
  skew: 0.00529,
  roundness: 0.356,
  circleX: 0.0506,
  circleY: 0.0377,
} as const;
