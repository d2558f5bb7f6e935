/** The limits that findings are held against: an editable set, each with where it comes from and who set its value. */
import { LEAST_RELEASES } from '../capture/evidence/least-releases.ts';
import type { LimitFrom } from './finding.ts';

/** Where the value in force was taken from: a file beats the settings, the settings beat the program's own. */
export type LimitSetBy = 'file' | 'settings' | 'default';

export interface Limit {
  readonly value: number;
  /** `share of the half travel`: 1 is from the rest to the gate along an axis. */
  readonly unit: string;
  readonly from: LimitFrom;
  /** One line: who says so, or why the workshop does. */
  readonly source: string;
  readonly setBy: LimitSetBy;
}

const HALF = 'share of the half travel';

const OWN = {
  offCentre: {
    value: 0.033,
    unit: HALF,
    from: 'workshop',
    source:
      'Below the usual first nudge of 50 counts in some 1,250; a maker of premium Hall joysticks allows 0.05 (data sheet, V/2 ± 5 % of the gain).',
  },
  seat: {
    value: 0.018,
    unit: HALF,
    from: 'workshop',
    source:
      '0.4° where full tilt is 23°, three times what well-fitted seats differ by; common practice knows only that a module not fully seated is not cured by calibration.',
  },
  turn: {
    value: 5,
    unit: 'degrees',
    from: 'workshop',
    source: 'Below 5° the turn of a part cannot be told from the hand that sweeps it.',
  },
  skew: {
    value: 3.5,
    unit: 'degrees',
    from: 'workshop',
    source: 'Alone it makes a mean radial error of 2 %, half of what a well calibrated magnetic stick shows.',
  },
  shortRange: {
    value: 0.012,
    unit: 'share of one side',
    from: 'workshop',
    source:
      'With what the gate hides, a side is called short from about the 3 % on by which the two sides of a linear Hall sensor may differ by its data sheet.',
  },
  clipped: {
    value: 0.01,
    unit: 'share of one side',
    from: 'workshop',
    source: 'As much as a proposal reaches beyond full output by its usual guard.',
  },
  wornTravel: {
    value: 0.002,
    unit: 'share of the travel',
    from: 'workshop',
    source: 'A fifth of a percent of the travel with gaps, leaps or unsteady readings is more than noise makes.',
  },
  noise: {
    value: 0.002,
    unit: HALF,
    from: 'published',
    source:
      "Output smoothness of precision plastic tracks: 0.1 % of the input at most, typically (a maker's handbook).",
  },
  noiseTimes: {
    value: 2,
    unit: 'times the other axis',
    from: 'workshop',
    source: 'The two sensors of one part are alike; at rest a sound one is hardly more restless than the other.',
  },
  looseReturn: {
    value: 0.015,
    unit: HALF,
    from: 'common practice',
    source: 'A 5 % zone hides most rests: with this scatter the region that holds 99 % of the releases fills it.',
  },
  overshoot: {
    value: 0.05,
    unit: 'share of full deflection',
    from: 'common practice',
    source: 'A 5 % zone hides most rests; a swing beyond it on the far side comes out as a push the other way.',
  },
  stale: {
    value: 0.03,
    unit: 'share of full deflection',
    from: 'workshop',
    source:
      "An edge usually stands some 2 % inside of the gate; three more in either direction, or at the rest, can be felt. In counts that come after the pad's own mapping, a stored edge may pretend a short range by as much.",
  },
  layers: {
    value: 0.04,
    unit: HALF,
    from: 'common practice',
    source: 'The usual first nudge of 50 counts in some 1,250.',
  },
  bounce: {
    value: 5,
    unit: 'ms',
    from: 'common practice',
    source: 'The usual time for which firmware waits a bounce out.',
  },
  dead: {
    value: 0.95,
    unit: 'share missing of the other axis',
    from: 'workshop',
    source: 'Noise and pick-up from the other axis stay below; no gate stops a working axis so early.',
  },
  astray: {
    value: 0.3,
    unit: 'share of the prompts',
    from: 'workshop',
    source:
      'One axis that runs backwards leads half of the prompts along the axes elsewhere, and always in the same way.',
  },
  disturbed: {
    value: 0.02,
    unit: HALF,
    from: 'workshop',
    source: 'Two fifths of a 5 % zone.',
  },
  releases: {
    value: LEAST_RELEASES,
    unit: 'releases',
    from: 'workshop',
    source: `Fewer releases allow no statement on how far the rest scatters, and no verdict but by a fault; ${LEAST_RELEASES} at least, as of fewer no region that holds 99 % of releases is known.`,
  },
  uncovered: {
    value: 10,
    unit: 'degrees',
    from: 'workshop',
    source:
      'A proposal for full reach is refused, and no verdict but by a fault given, while a wider gap of directions is not covered; 85° at most, as a whole quarter unseen leaves an edge without evidence.',
  },
  late: {
    value: 3,
    unit: 'times',
    from: 'workshop',
    source:
      'One report in a hundred comes later than three usual intervals: faster than that the stick cannot be followed.',
  },
  losses: {
    value: 2,
    unit: 'times',
    from: 'workshop',
    source:
      'A disturbance from outside may do it once or twice in a survey; a contact that opens does it again and again.',
  },
  slowReturn: {
    value: 0.25,
    unit: 's',
    from: 'workshop',
    source: 'Small sticks return at some 16 Hz, within a tenth of a second; three times that can be felt.',
  },
  together: {
    value: 0.08,
    unit: 'share of the other axis',
    from: 'workshop',
    source: 'Twice what axes make that stand 3.5° from square; a slanted part stays below.',
  },
  drift: {
    value: 0.02,
    unit: HALF,
    from: 'workshop',
    source: 'Two fifths of a 5 % zone, within the minute or two that a survey takes.',
  },
  unevenReach: {
    value: 0.06,
    unit: 'share of full deflection',
    from: 'workshop',
    source: 'Half as much again as the mean radial error of a well calibrated magnetic stick.',
  },
  hiddenRest: {
    value: 0.015,
    unit: HALF,
    from: 'workshop',
    source: 'As much as the rest may scatter: more hides whether it does.',
  },
  otherPad: {
    value: 0.5,
    unit: 'share of full deflection',
    from: 'workshop',
    source: 'No fault of a fitted stick moves its rest or its gate by half of the travel.',
  },
} as const satisfies Readonly<Record<string, Omit<Limit, 'setBy'>>>;

export type LimitId = keyof typeof OWN;
export type Limits = Readonly<Record<LimitId, Limit>>;

export const limitIds = Object.keys(OWN) as readonly LimitId[];

export const defaultLimits: Limits = Object.fromEntries(
  limitIds.map((id) => [id, { ...OWN[id], setBy: 'default' }]),
) as Record<LimitId, Limit>;
