/** Which tone belongs to a distance: the ear leads the hand while the eyes stay on the part. */

export interface Tone {
  readonly hertz: number;
  /** Pulses a second; 0 is a steady tone and means inside. */
  readonly pulses: number;
}

/** Distance in tolerances at which the tone begins. */
export const TONE_BEGINS = 12;
const FAR_HERTZ = 220;
const NEAR_HERTZ = 660;
const INSIDE_HERTZ = 880;

/**
 * `ratio` is the larger distance of the two axes in tolerances. Inside: a steady 880 Hz. Near: pulses whose pitch rises
 * by equal ratios from 220 to 660 Hz and whose pace goes from 3 to 9 a second. Further away: silence (null).
 */
export function toneFor(ratio: number | null): Tone | null {
  if (ratio === null || !Number.isFinite(ratio) || ratio >= TONE_BEGINS) return null;
  if (ratio <= 1) return { hertz: INSIDE_HERTZ, pulses: 0 };
  const near = 1 - Math.log(ratio) / Math.log(TONE_BEGINS);
  return { hertz: FAR_HERTZ * (NEAR_HERTZ / FAR_HERTZ) ** near, pulses: 3 + 6 * near };
}
