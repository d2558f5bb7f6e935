/** Faults of how a stick comes back. */
import { changePart, type Fault, type Sound } from './fault.ts';
import { FULL_TILT } from './gate.ts';
import type { Spring } from './part.ts';
import { polar } from './plane.ts';

function changeSpring(sound: Sound, change: Partial<Spring>): Sound {
  return changePart(sound, { spring: { ...sound.part.spring, ...change } });
}

const degreesOf = (percent: number): number => (FULL_TILT * percent) / 100;

export const returnFaults = {
  /** So many seconds until 2 % of the full tilt are left: the whole way is slow, or its last twelfth creeps. */
  'slow-return': {
    unit: 's',
    apply: (sound, size, chance) => changeSpring(sound, { slow: { seconds: size, creep: chance.happens(0.5) } }),
  },
  /** Resting places scatter by this σ per axis, % of the half travel. */
  'loose-return': {
    unit: '% of the half travel',
    apply: (sound, size) => changeSpring(sound, { scatter: degreesOf(size), carried: 0.3 }),
  },
  /** It swings beyond its rest by this share of the way, % (damping ζ with exp(−πζ/√(1−ζ²)) = size). */
  overshoot: {
    unit: '% of the way',
    apply: (sound, size) => {
      const fade = Math.log(size / 100);
      return changeSpring(sound, { damping: -fade / Math.hypot(Math.PI, fade) });
    },
  },
  /** Two resting places this far apart, each taken by some half of the releases. */
  'two-rests': {
    unit: '% of the half travel',
    apply: (sound, size, chance) =>
      changeSpring(sound, {
        second: { from: polar(degreesOf(size), chance.between(0, 360)), share: chance.between(0.35, 0.65) },
      }),
  },
  /** One release of the survey comes to rest this far off the others. */
  'outlier-rest': {
    unit: '% of the half travel',
    apply: (sound, size, chance) =>
      changeSpring(sound, {
        outlier: { release: chance.whole(3, 20), by: polar(degreesOf(size), chance.between(0, 360)) },
      }),
  },
  /** The rest wanders by so much in 150 s, about the length of a survey. */
  'drifting-rest': {
    unit: '% of the half travel',
    apply: (sound, size, chance) => changeSpring(sound, { drift: polar(degreesOf(size), chance.between(0, 360)) }),
  },
} as const satisfies Readonly<Record<string, Fault>>;
