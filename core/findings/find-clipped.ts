/** Clipped sensor: it gives no more before the gate stops the stick. */
import { directionsAbout } from './directions-about.ts';
import { flatSides, type FlatSide } from './flat-sides.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { PinnedSide } from './pinned-sides.ts';
import type { Subject } from './subject.ts';
import { percent, sideName } from './words.ts';

const COVERAGE = 2;

/**
 * Measure: the share of the side that is cut off, 1 − (count where the readings pile up)/(count that the outline of the other
 * directions leads to), from the rest. In the `reported` domain the pad's own mapping stops at a limit, and nothing is concluded.
 */
export function findClipped(subject: Subject, limits: Limits): Finding | null {
  const { stick, outline, aboutRest, domain, report } = subject;
  if (domain === 'reported' || report.rim === null || report.rest === null || report.rest.noise === null) return null;
  const cuts = subject.pinned.map((pinned) => ({ ...pinned, ...cutOff(subject, pinned) }));
  const [worst] = cuts.toSorted((a, b) => b.cut - a.cut);
  const none = `No reading of the ${stick} stick stands at a limit of its sensor before the gate stops it.`;
  const flat = outline === null || !aboutRest ? [] : flatSides(outline, report.rim.directions);
  const [flattest] = flat.toSorted((a, b) => b.cut - a.cut);
  if (flattest !== undefined && flattest.cut > (worst?.cut ?? 0)) return findFlat(subject, limits, flattest);
  if (worst === undefined) {
    const clean = { value: 0, u95: 0, says: { fail: none, pass: none, 'cannot say': none } };
    return makeFinding({ id: 'clipped-sensor', stick, limit: limits.clipped, severity: 'fault', next: '', ...clean });
  }
  const name = sideName(worst.axis, worst.side);
  const says = `${worst.readings} readings of the ${stick} stick pile up at count ${worst.count} ${name === 'up' || name === 'down' ? name : `to the ${name}`}, ${percent(worst.cut)} before the gate would stop it`;
  return makeFinding({
    id: 'clipped-sensor',
    stick,
    value: outline === null || !aboutRest ? null : Math.max(0, worst.cut),
    u95: worst.u95,
    limit: limits.clipped,
    severity: 'fault',
    says: {
      fail: `${says}: the sensor is at its limit.`,
      pass: `${says}, too little to matter.`,
      'cannot say': `${says}; whether that is too much cannot be told.`,
    },
    for: [`${percent(worst.share, 0)} of the readings near that edge stand on one count, without their noise.`],
    against: [],
    causes: [
      'The magnet is too strong, or too near to its sensor',
      'The part rests off its middle, so that one side runs out of range',
      'The supply of the sensor is too low, or the converter at its end',
    ],
    next: 'Nothing brings the cut-off part back by calibration: measure the supply of the part, then try another one.',
    shows: {
      directions: directionsAbout(worst.axis === 'x' ? 90 - 90 * worst.side : 180 - 90 * worst.side, 15),
      counts: [{ axis: worst.axis, from: worst.count, to: worst.count }],
    },
  });
}

function cutOff(
  { outline, report, fields }: Subject,
  { axis, side, count }: PinnedSide,
): { cut: number; u95: number | null } {
  const rest = report.rest?.point[axis];
  if (outline === null || rest === undefined) return { cut: 0, u95: null };
  const plus = side > 0;
  const name = axis === 'x' ? (plus ? 'xPlus' : 'xMinus') : plus ? 'yPlus' : 'yMinus';
  const centre = axis === 'x' ? 'centreX' : 'centreY';
  const span = outline.value[name];
  const full = span * (1 + side * outline.value[centre]);
  const reached = side * fields[axis].up * (count - rest);
  const variance = outline.variance({ [name]: 1 / span, [centre]: side });
  return { cut: 1 - reached / full, u95: COVERAGE * Math.sqrt(variance) };
}

const SIDE_WORDS: Readonly<Record<string, string>> = { right: 'right', left: 'left', up: 'upper', down: 'lower' };

/** The sensor ends behind its noise: no count takes the readings, but the gate comes out straight. */
function findFlat({ stick, fields, report }: Subject, limits: Limits, flat: FlatSide): Finding {
  const { axis, side, cut, u95, counts } = flat;
  const count = Math.round((report.rest?.point[axis] ?? 0) + fields[axis].up * counts);
  const says = `The gate of the ${stick} stick comes out straight on its ${SIDE_WORDS[sideName(axis, side)] ?? ''} side, at count ${count}, ${percent(cut)} before it would stop the stick`;
  return makeFinding({
    id: 'clipped-sensor',
    stick,
    value: cut,
    u95,
    limit: limits.clipped,
    severity: 'fault',
    says: {
      fail: `${says}: the sensor is at its limit.`,
      pass: `${says}, too little to matter.`,
      'cannot say': `${says}; whether that is too much cannot be told.`,
    },
    for: ['The directions beside it lead on beyond that count.'],
    against: ['A gate with a straight side there, or a chipped one, looks the same.'],
    causes: [
      'The magnet is too strong, or too near to its sensor',
      'The part rests off its middle, so that one side runs out of range',
      'The supply of the sensor is too low, or the converter at its end',
    ],
    next: 'Nothing brings the cut-off part back by calibration: measure the supply of the part, then try another one.',
    shows: {
      directions: directionsAbout(axis === 'x' ? 90 - 90 * side : 180 - 90 * side, 25),
      counts: [{ axis, from: count, to: count }],
    },
  });
}
