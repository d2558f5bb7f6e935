/** Findings, decisions and verdicts in the words of the screen. */
import type { Decision, FindingId, LimitFrom, Severity, Verdict } from '../../core/findings/finding.ts';

interface Words {
  /** What is wrong where it fails. */
  readonly fault: string;
  /** What is looked at, where it holds or cannot be told. */
  readonly check: string;
  /** What it means, in one sentence. */
  readonly means: string;
}

export const FINDING_WORDS: Readonly<Record<FindingId, Words>> = {
  'stale-mapping': {
    fault: 'Stored numbers are stale',
    check: 'Stored numbers',
    means: 'Rest, gate and sensor agree with each other, but the minimum, centre or maximum in use is another one.',
  },
  'off-centre-part': {
    fault: 'Part off centre',
    check: 'Centring of the part',
    means: 'Rest and gate agree with each other, and both stand off the middle of the sensor.',
  },
  'seat-not-flat': {
    fault: 'Seat not flat',
    check: 'Seat of the part',
    means: 'The rest stands off the centre of the gate: the part leans in its place.',
  },
  'turned-part': {
    fault: 'Part turned',
    check: 'Turn of the part',
    means: 'A push along an axis comes out turned, by the same angle on both axes.',
  },
  'skewed-part': {
    fault: 'Axes not square',
    check: 'Squareness of the axes',
    means: 'The two axes do not stand at 90° to each other.',
  },
  'short-range': {
    fault: 'Short range',
    check: 'Range by direction',
    means: 'In some directions the sensor gives less than the others let expect.',
  },
  'clipped-sensor': {
    fault: 'Sensor clipped',
    check: 'Room of the sensor',
    means: 'Counts pile up at an end before the gate is met: what lies beyond is cut off.',
  },
  'worn-track': {
    fault: 'Worn track',
    check: 'Track',
    means: 'Counts that never occur, leap or tremble along a slow sweep.',
  },
  'noisy-joint': {
    fault: 'Noisy joint',
    check: 'Noise at rest',
    means: 'Readings tremble within a dwell by more than a sound part and joint do.',
  },
  'dead-axis': { fault: 'Dead axis', check: 'Both axes alive', means: 'One axis does not follow the stick.' },
  'swapped-axes': {
    fault: 'Axes swapped',
    check: 'Order of the axes',
    means: 'A push along one axis moves the other.',
  },
  'inverted-axis': { fault: 'Axis inverted', check: 'Sense of the axes', means: 'A push comes out the other way.' },
  'loose-return': {
    fault: 'Loose return',
    check: 'Return to rest',
    means: 'The rest scatters over releases by more than a zone should have to hide.',
  },
  overshoot: {
    fault: 'Swings past its rest',
    check: 'Overshoot when let go',
    means: 'Let go from full tilt, the stick swings past its rest to the far side.',
  },
  'layers-disagree': {
    fault: 'Stored layers disagree',
    check: 'Stored layers',
    means: 'The mappings stored in the pad differ from each other.',
  },
  'inputs-fail': {
    fault: 'Inputs fail',
    check: 'Buttons, hat and triggers',
    means: 'A button, hat direction or trigger was not seen pressed and released, or bounces.',
  },
  'disturbed-rest': {
    fault: 'Rest is disturbed',
    check: 'Rest under disturbance',
    means: 'Rumble, the other stick, a click, the charger or the shell moves the rest.',
  },
  'warming-up': {
    fault: 'Still warming up',
    check: 'Warm-up',
    means: 'The rest still drifts: after soldering the numbers are taken too early.',
  },
  'rest-not-measured': {
    fault: 'Rest not measured',
    check: 'Releases taken',
    means: 'Too few settled releases for a statement on the rest.',
  },
  'rim-not-covered': {
    fault: 'Gate not covered',
    check: 'Gate covered',
    means: 'Directions that were not turned over twice each way.',
  },
  'mapping-of-another-pad': {
    fault: 'Mapping of another pad',
    check: 'Whose mapping',
    means: 'The mapping in use does not fit what was measured at all.',
  },
  'late-reports': {
    fault: 'Reports come late',
    check: 'Reports in time',
    means: 'One report in a hundred came much later than the usual interval, as received here.',
  },
  'signal-lost': {
    fault: 'Signal lost',
    check: 'Signal without breaks',
    means: 'The reading leaves the stick faster than a hand or a spring can move it, and comes back.',
  },
  'slow-return': {
    fault: 'Slow return',
    check: 'Speed of the return',
    means: 'Let go, the stick creeps back to its rest.',
  },
  'axes-together': {
    fault: 'Axes move together',
    check: 'Axes apart',
    means: 'Each axis carries a share of the other, as where both hang on one bad lead.',
  },
  'drifting-rest': {
    fault: 'Rest drifts',
    check: 'Steadiness of the rest',
    means: 'From release to release the rest moves on in one way.',
  },
  'two-rests': {
    fault: 'Two rests',
    check: 'One rest',
    means: 'Let go, the stick settles in one of two places.',
  },
  'odd-release': {
    fault: 'A release apart',
    check: 'Releases together',
    means: 'One or two of many releases came to rest far from all others.',
  },
  'unpushed-release': {
    fault: 'A release without a push',
    check: 'Releases after a push',
    means: 'A release was asked for and the stick had not been pushed: it is no release.',
  },
  'uneven-reach': {
    fault: 'Uneven reach',
    check: 'Reach between the axes',
    means: 'Between the axes the stick gives less than its gate lets expect.',
  },
  'hidden-rest': {
    fault: 'Rest hidden by the pad',
    check: 'Middle as it is',
    means: 'The pad itself answers the middle with one count, so that the rest within cannot be seen.',
  },
  'several-surveys': {
    fault: 'Several surveys in one log',
    check: 'One survey a log',
    means: 'The stick was surveyed more than once in this log; the last survey is judged.',
  },
};

export const VERDICT_WORDS: Readonly<Record<Verdict, { readonly says: string; readonly means: string }>> = {
  keep: { says: 'Keep', means: 'Nothing that was measured asks for work on this stick.' },
  recalibrate: { says: 'Recalibrate', means: 'The part is sound; other numbers cure what is wrong.' },
  reseat: { says: 'Reseat', means: 'The part has to be taken up and fitted again; numbers alone do not cure it.' },
  replace: { says: 'Replace', means: 'The part itself is at fault; neither numbers nor fitting cure it.' },
  undecided: { says: 'Undecided', means: 'What was measured does not decide; below stands what is missing.' },
  'not surveyed': { says: 'Not surveyed', means: 'The pad has this stick, and the log holds nothing of it.' },
};

/** A sign beside each word, so that colour never carries it alone. */
export const DECISION_SIGNS: Readonly<Record<Decision, string>> = { pass: '✓', fail: '×', 'cannot say': '?' };
export const DECISION_SAYS: Readonly<Record<Decision, string>> = {
  pass: 'holds',
  fail: 'fails',
  'cannot say': 'cannot say',
};

export const SEVERITY_MEANS: Readonly<Record<Severity, string>> = {
  fault: 'has to be mended before the pad goes out',
  caution: 'works, but will be felt or grow worse',
  note: 'to be known, nothing to be done',
};

export const LIMIT_FROM_MEANS: Readonly<Record<LimitFrom, string>> = {
  published: 'a standard or a maker’s data sheet says so',
  'common practice': 'what those who do this for a living go by',
  workshop: 'the workshop’s own; change it to yours',
};

/** What a finding is called: by its fault where it fails, else by what was looked at. */
export function findingTitle({ id, decision }: { readonly id: FindingId; readonly decision: Decision }): string {
  const { fault, check } = FINDING_WORDS[id];
  return decision === 'fail' ? fault : check;
}
