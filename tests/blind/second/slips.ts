/** What a hand can do wrong in a survey of a sound stick. */

export const slips = [
  'short-turns',
  'turned-back',
  'left-gate',
  'one-way-turns',
  'too-fast-turns',
  'one-sided-releases',
  'no-push',
  'bad-release',
  'button-held',
  'wrong-stick',
] as const;
/**
 * `short-turns` of 350°, each begun anew; `turned-back` by 40° once a turn; `left-gate` once a turn; `one-way-turns`; `too-fast-turns`
 * with 20° from report to report, or four a second; `one-sided-releases` all from within 30°; `no-push` before one release; `bad-release`
 * that the thumb keeps 8 % of the full tilt off; `button-held` from the first to the last capture of the stick; `wrong-stick` turned in
 * the gate.
 */
export type Slip = (typeof slips)[number];
