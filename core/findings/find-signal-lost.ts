/** Signal lost: for a moment the reading is somewhere else than the stick, and comes back. */
import { directionsAbout } from './directions-about.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { lossesOnWorn, lossPlace } from './loss-place.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';

/** Where so many of the losses lie on stretches of the track that are worn, it is the track (see `findWornTrack`). */
const MOST_WORN = 0.7;
/** Spans that are shown. */
const MOST_SHOWN = 20;

/**
 * Measure: how many times the reading left the stick faster than a hand or a spring can, and came back (see `findSignalLosses`); counted,
 * so without uncertainty. Where most of them lie at one place of the gate or of an axis it is that place, else a contact that opens now and then.
 */
export function findSignalLost(subject: Subject, limits: Limits): Finding | null {
  const { losses, readings, stick } = subject;
  if (readings === 0) return null;
  const times = losses.length;
  const longest = losses.reduce((most, { startUs, endUs }) => Math.max(most, endUs - startUs), 0) / 1000;
  const place = lossPlace(subject);
  const isWorn = lossesOnWorn(subject) >= MOST_WORN;
  const often = times === 0 ? '' : `, once in ${Math.round(readings / times)} readings`;
  const where =
    place === null
      ? 'now here, now there'
      : place.kind === 'directions'
        ? `${place.within} of them while it passes ${place.from}° to ${place.to % 360}° of its gate`
        : `${place.within} of them while ${place.axis} passes counts ${place.from} to ${place.to}`;
  const says = `The reading of the ${stick} stick left it ${times} times${often}, for ${longest.toFixed(0)} ms at most, ${where}`;
  return makeFinding({
    id: 'signal-lost',
    stick,
    value: times,
    u95: 0,
    limit: limits.losses,
    severity: 'fault',
    decision: times > limits.losses.value && !isWorn ? 'fail' : 'pass',
    says: {
      fail: `${says}: no hand moves so fast, so the signal is lost there.`,
      pass:
        times === 0
          ? `The reading of the ${stick} stick never leaves it.`
          : isWorn
            ? `The reading of the ${stick} stick left it ${times} times, nearly always where its track is worn.`
            : `The reading of the ${stick} stick left it ${times === 1 ? 'once' : `${times} times`}, too seldom to tell from a disturbance.`,
      'cannot say': `${says}.`,
    },
    for: [
      place !== null && place.kind === 'directions'
        ? `It leaves at the same place in ${place.turns} of the ways along the gate.`
        : null,
      'Everything else is measured of what is left without these readings.',
    ],
    against: ['A disturbance from outside (a charger, a cable that was moved) does it now and then, too.'],
    causes: [
      'A contact that opens: a cracked joint, a pin that is not soldered through, a loose flat cable',
      place === null ? 'A wiper that lifts off its track' : 'A track that is broken or dirty at that place',
      'A damaged wire that moves with the stick',
    ],
    next: 'Take the battery off; go over the joints and the cable of that stick and move it slowly through the place while you watch the strip. If it stays at the same place of the stick, fit another part; mind the hot iron.',
    shows: {
      spans: losses.slice(0, MOST_SHOWN).map(({ startUs, endUs }) => ({ startUs, endUs })),
      directions:
        place !== null && place.kind === 'directions'
          ? directionsAbout((place.from + place.to) / 2, Math.max(3, (place.to - place.from) / 2))
          : [],
      counts: place !== null && place.kind === 'counts' ? [{ axis: place.axis, from: place.from, to: place.to }] : [],
    },
  });
}
