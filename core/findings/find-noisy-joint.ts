/** Noisy joint: the reading is restless while nobody touches the stick. */
import type { StickReport } from '../measure/measure-report.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

/** Dwells of half a second have some independent readings each: the noise is known to this share of itself. */
const KNOWN_TO = 0.05;

/** Below this share of the step of the counts a σ says more of the step than of the noise. */
const TOLD_BY_STEP = 0.4;

/** Where a reading only goes to and fro between two counts, rounding makes as much of it as noise may. */
const COARSE_TIMES = 2;

/**
 * Measure: σ within the dwells of the worse axis, in shares of its half travel, or as a multiple of the other axis' σ: what
 * is further beyond its limit. Noise below the step of the counts is below any limit that can be seen, unless the step itself
 * is wider, and is no measure for the other axis. Where too few releases settle, noise itself may keep them from it: then it
 * is that of the readings near the rest (see `unsettledNoise`).
 */
export function findNoisyJoint(subject: Subject, limits: Limits): Finding | null {
  const { report, stick, half } = subject;
  const noise = subject.unsettled ?? report.rest?.noise ?? null;
  if (noise === null) return null;
  const { step } = report.rest ?? { step: { x: 1, y: 1 } };
  const axes = (['x', 'y'] as const).flatMap((axis) => {
    const isBelow = report.rest?.noiseBelowStep?.[axis] === true;
    const sigma = noise[axis] ?? (isBelow && report.captures === 'inferred' ? 0 : null);
    if (sigma === null) return [];
    const isCoarse = subject.unsettled !== null || isBelow;
    const rounding = (isCoarse ? COARSE_TIMES : 1) * (step[axis] / Math.sqrt(12));
    return [{ axis, sigma, isBelow, share: sigma / half[axis], step: rounding / half[axis] }];
  });
  const [worst] = axes.toSorted((a, b) => b.share - a.share);
  if (worst === undefined) return null;
  const other = axes.find(({ axis }) => axis !== worst.axis);
  const times = other === undefined || other.sigma < TOLD_BY_STEP * step[other.axis] ? null : worst.share / other.share;
  const isUneven = times !== null && times / limits.noiseTimes.value > worst.share / limits.noise.value;
  const isUntold = worst.isBelow || worst.sigma < TOLD_BY_STEP * step[worst.axis];
  const says = `At rest the ${worst.axis} reading of the ${stick} stick is restless by ${worst.sigma.toFixed(2)} counts, ${percent(worst.share, 2)} of the half travel${isUneven ? ` and ${times.toFixed(1)} times the other axis` : ''}`;
  return makeFinding({
    id: 'noisy-joint',
    stick,
    value: isUneven ? times : worst.share,
    u95: isUneven ? Math.SQRT2 * KNOWN_TO * times : Math.hypot(KNOWN_TO * worst.share, worst.step),
    limit: isUneven ? limits.noiseTimes : limits.noise,
    severity: 'fault',
    says: {
      fail: `${says}: a joint or a wire is noisy.`,
      pass: isUntold
        ? `At rest the ${worst.axis} reading of the ${stick} stick stays within a step of its counts, as a sound part does.`
        : `${says}, as a sound part does.`,
      'cannot say': isUntold
        ? `At rest the readings of the ${stick} stick stay within a step of their counts; noise below that step, ${percent(worst.step, 2)} of the half travel, cannot be told.`
        : `${says}; whether that is too much cannot be told at this step of the counts.`,
    },
    for: [
      other === undefined || isUntold
        ? null
        : `The other axis ${other.sigma === 0 ? 'stays within a step' : `has ${other.sigma.toFixed(2)} counts`}.`,
      subject.unsettled === null || isUntold
        ? null
        : 'Too little of the rest settled: it is that of the readings near it.',
    ],
    against: [
      other !== undefined && other.share > limits.noise.value && !isTrackUnsteady(report)
        ? 'Both axes are restless: look at the supply and the cable first.'
        : null,
    ],
    causes: [
      'A cold or cracked joint of that axis',
      'Flux residue or moisture between the pins',
      'A noisy supply, or a charger that is plugged in',
    ],
    next: 'Take charger and battery off, go over the joints of that axis and clean the flux; mind the hot iron. If it stays, fit another part.',
  });
}

/** Where the readings are unsteadier at places of the travel it is the track that trembles, not the supply. */
function isTrackUnsteady({ travel }: StickReport): boolean {
  return [travel?.x, travel?.y].some((axis) => (axis?.unsteady ?? []).length > 0);
}
