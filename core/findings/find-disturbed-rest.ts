/** Disturbed rest: something that has nothing to do with the stick moves its rest. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

const WORDS: Readonly<Record<string, string>> = {
  rumble: 'rumble on',
  'other-stick': 'the other stick at full tilt',
  click: 'the stick clicked in',
  charger: 'the charger plugged in',
  shell: 'the shell screwed shut',
};

const CAUSES: Readonly<Record<string, readonly string[]>> = {
  rumble: ['A loose module, magnet or wire that shakes', 'The motors draw the supply down'],
  'other-stick': ['Both sticks share a supply with too much resistance', 'The magnets of the sticks reach each other'],
  click: ['The switch under the stick bends the module', 'The module is not fully seated on the side of its switch'],
  charger: ['Noise or a shift of the supply from the charger'],
  shell: ['The shell, a cable or a screw presses on the module'],
};

/** Measure: the largest shift of the rest under any disturbance, in shares of the half travel. */
export function findDisturbedRest({ report, stick, half }: Subject, limits: Limits): Finding | null {
  const shifts = (report.disturbance ?? []).map((one) => ({
    ...one,
    share: Math.hypot(one.shift.x / half.x, one.shift.y / half.y),
    spread: one.u95 === null ? null : Math.hypot(one.u95.x / half.x, one.u95.y / half.y),
  }));
  const [worst] = shifts.toSorted((a, b) => b.share - a.share);
  if (worst === undefined) return null;
  const says = `With ${WORDS[worst.of] ?? worst.of} the rest of the ${stick} stick moves by ${percent(worst.share)} of the half travel`;
  return makeFinding({
    id: 'disturbed-rest',
    stick,
    value: worst.share,
    u95: worst.spread,
    limit: limits.disturbed,
    severity: 'caution',
    says: {
      fail: `${says}.`,
      pass: `No disturbance moves the rest of the ${stick} stick by more than ${percent(worst.share)}.`,
      'cannot say': `${says}; whether that is too much cannot be told.`,
    },
    for: shifts
      .filter((one) => one !== worst && one.share > limits.disturbed.value)
      .map((one) => `With ${WORDS[one.of] ?? one.of}: ${percent(one.share)}.`),
    against: [
      worst.of === 'click' ? 'A thumb that presses the stick in also pushes it: press it straight down.' : null,
    ],
    causes: CAUSES[worst.of] ?? ['It reaches the sensor by the supply or by force'],
    next:
      worst.of === 'shell'
        ? 'Loosen the screws by half a turn each and look which one brings it; move the cable.'
        : 'Press the module down and go over its joints, battery off first; then record the same disturbance again.',
    shows: { spans: shifts.map(({ startUs, endUs }) => ({ startUs, endUs })) },
  });
}
