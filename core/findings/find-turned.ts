/** Turned part: it sits turned in the shell, so that a push straight up comes out to one side. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { PromptedWays } from './prompted-ways.ts';
import type { Subject } from './subject.ts';
import { degrees } from './words.ts';

const COVERAGE = 2;
/** How far a hand may aim aside on all of its pushes, degrees: workshop. */
const AIM = 4;
/** An eight-sided gate is usually fitted with corners along the axes to within so many degrees: common practice. */
const CORNERS = 1.5;
/** Further from an axis the nearest corner may be the next one. */
const MOST_BY_CORNERS = 15;

interface Turn {
  readonly angle: number;
  readonly u95: number | null;
  readonly by: 'sweeps' | 'pushes' | 'corners';
}

/**
 * Measure: degrees that the part is turned, counter-clockwise positive, as seen in prompted sweeps; else by the corners of an
 * eight-sided gate; else by where prompted pushes went. A round gate alone cannot show it, and an axis that is swapped or inverted has no turn to speak of.
 */
export function findTurned(subject: Subject, limits: Limits): Finding | null {
  const turn = turnOf(subject);
  if (turn === null) return null;
  const value = Math.abs(turn.angle);
  const way = turn.angle > 0 ? 'counter-clockwise' : 'clockwise';
  const u95 = turn.u95 === null ? '' : ` ± ${degrees(turn.u95)}`;
  const says = `The ${subject.stick} part sits turned ${way} by ${degrees(value)}${u95}, as ${SHOWN_BY[turn.by]} show`;
  return makeFinding({
    id: 'turned-part',
    stick: subject.stick,
    value,
    u95: turn.u95,
    limit: limits.turn,
    severity: 'fault',
    says: {
      fail: `${says}: a push straight up comes out to one side.`,
      pass: `${says}, which is near enough.`,
      'cannot say': `${says}; whether that is too much cannot be told.`,
    },
    for: [
      {
        sweeps: 'Sweeps along both axes are off by the same angle.',
        pushes: 'Pushes in all directions are off by the same angle in the mean.',
        corners: 'All eight corners are off by the same angle.',
      }[turn.by],
    ],
    against: [
      turn.by === 'corners' ? 'The gate may be turned in its shell.' : 'The hand may have held the pad turned.',
    ],
    causes: [
      'The module is soldered in turned',
      'The sensor boards of the part are turned together',
      'The gate ring is turned in the shell',
    ],
    next: 'Sweep once more along a straight edge; if it stays, heat the posts and turn the module. Take the battery off first and mind the hot iron.',
    unsure: 'Sweep once more along a straight edge.',
    shows: { directions: [0, 90, 180, 270] },
  });
}

const SHOWN_BY = {
  sweeps: 'sweeps along its axes',
  pushes: 'prompted pushes',
  corners: 'the corners of its gate',
} as const;

function turnOf({ report, outline, prompted }: Subject): Turn | null {
  if (prompted !== null && prompted.wiring !== 'as it should be') return null;
  const { travel } = report;
  if (travel !== null && travel.turnAngle !== null) {
    if (Math.abs(travel.turnAngle) > 45) return null;
    return { angle: travel.turnAngle, u95: travel.turnU95, by: 'sweeps' };
  }
  if (outline?.sides !== 8) return prompted === null ? null : byPushes(prompted);
  // The shell's corners stand still: seen by a part that is turned one way they are turned the other.
  const corner = (-outline.value.corner * 180) / Math.PI;
  const angle = corner - 45 * Math.round(corner / 45);
  if (Math.abs(angle) > MOST_BY_CORNERS) return null;
  const fit = (COVERAGE * 180 * Math.sqrt(outline.variance({ corner: 1 }))) / Math.PI;
  return { angle, u95: Math.hypot(fit, CORNERS), by: 'corners' };
}

/** A thumb that is asked for a direction goes there to within its aim, on one side of it now and then on all prompts. */
function byPushes({ turn, turnU95 }: PromptedWays): Turn {
  return { angle: turn, u95: Math.hypot(turnU95, AIM), by: 'pushes' };
}
