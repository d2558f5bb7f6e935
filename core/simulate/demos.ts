/** The named pads: one sound build and, as data, what is wrong with the others. */
import { done, failed, type Result } from '../result.ts';
import type { PadBuild, SensorBuild, StickBuild } from './build.ts';
import { usualSpot } from './fault-spot.ts';
import { moveStored } from './stored-faults.ts';

export type DemoName = 'healthy' | 'off-centre' | 'short-range' | 'worn' | 'plain' | 'turned' | 'loose' | 'stale';

/** A sensor of a sound part: some 1,250 counts to either side of about 2,050, one or two counts of noise. */
const soundSensor: SensorBuild = {
  middle: 2050,
  gain: 1250,
  up: 1,
  bend: -0.02,
  reach: { minus: 1, plus: 1 },
  noise: 1.2,
  clip: { low: 60, high: 4030 },
  worn: [],
};

const soundLeft: StickBuild = {
  gate: { shape: 'round', radius: 1, centre: { x: 0.004, y: -0.006 } },
  back: { naturalHz: 16, dampingRatio: 1, friction: { x: 0.005, y: 0.0045 }, frictionSpread: 0.35 },
  turnDegrees: 1.2,
  crossTalk: { xFromY: 0.008, yFromX: -0.005 },
  x: { ...soundSensor, middle: 2061 },
  // HID's habit: the count of y grows downwards.
  y: { ...soundSensor, middle: 2038, gain: 1236, up: -1 },
};

const soundRight: StickBuild = {
  ...soundLeft,
  gate: { shape: 'round', radius: 1, centre: { x: -0.005, y: 0.003 } },
  turnDegrees: -0.7,
  x: { ...soundSensor, middle: 2044, gain: 1262, noise: 1.4 },
  y: { ...soundSensor, middle: 2055, gain: 1248, up: -1, noise: 1.4 },
};

/** What the maker stored for the sound parts. */
const firmware: PadBuild['firmware'] = {
  left: { x: { min: 850, centre: 2061, max: 3270 }, y: { min: 840, centre: 2038, max: 3235 } },
  right: { x: { min: 825, centre: 2044, max: 3265 }, y: { min: 850, centre: 2055, max: 3260 } },
};

const sound: PadBuild = {
  product: 'Bench pad, healthy',
  family: 'sensor',
  sticks: { left: soundLeft, right: soundRight },
  firmware,
  intervalMicros: 1000,
  jitterMicros: 90,
};

function withLeft(product: string, left: Partial<StickBuild>): PadBuild {
  return { ...sound, product, sticks: { left: { ...soundLeft, ...left }, right: soundRight } };
}

const wornTrack: Pick<SensorBuild, 'noise' | 'worn'> = {
  noise: 1.8,
  worn: [
    { from: -0.09, to: 0.07, noise: 3, liftShare: 0.004, lift: 25 },
    { from: 0.42, to: 0.58, noise: 9, liftShare: 0.06, lift: 140 },
  ],
};

/** Every demo with its build and one plain line on what it shows. */
export const demos: Readonly<Record<DemoName, { readonly says: string; readonly build: PadBuild }>> = {
  healthy: { says: 'Sound sticks, well fitted; 12-bit sensor counts.', build: sound },
  'off-centre': {
    says: 'The left stick rests 90 counts to the right of where it should.',
    build: withLeft('Bench pad, off centre', {
      x: { ...soundLeft.x, middle: soundLeft.x.middle + 90 },
      y: { ...soundLeft.y, middle: soundLeft.y.middle - 35 },
    }),
  },
  'short-range': {
    says: 'The left stick gives a fifth too little to the right; its gate has eight sides.',
    build: withLeft('Bench pad, short range', {
      gate: { shape: 'eightSided', radius: 1.04, centre: { x: 0.004, y: -0.006 } },
      x: { ...soundLeft.x, reach: { minus: 1, plus: 0.8 } },
    }),
  },
  worn: {
    says: 'The left stick has a worn track, comes back loosely and sits on a tilted seat.',
    build: withLeft('Bench pad, worn', {
      gate: { shape: 'round', radius: 0.97, centre: { x: -0.035, y: 0.02 } },
      back: { ...soundLeft.back, friction: { x: 0.016, y: 0.013 }, frictionSpread: 0.5 },
      x: { ...soundLeft.x, ...wornTrack },
      y: { ...soundLeft.y, ...wornTrack },
    }),
  },
  plain: {
    says: 'An ordinary pad with 8-bit reports after its own mapping, 250 times a second.',
    build: { ...sound, product: 'Bench pad, plain', family: 'plain', intervalMicros: 4000, jitterMicros: 250 },
  },
  turned: {
    says: 'The left part sits turned by 11° and its axes are 6° from square.',
    build: withLeft('Bench pad, turned', { turnDegrees: 11, crossTalk: { xFromY: 0.052, yFromX: 0.052 } }),
  },
  loose: {
    says: 'The left stick comes back loosely and swings past its rest.',
    build: withLeft('Bench pad, loose', {
      back: { naturalHz: 12, dampingRatio: 0.5, friction: { x: 0.022, y: 0.02 }, frictionSpread: 0.5 },
    }),
  },
  stale: {
    says: 'Sound sticks; what the pad stores for the left one is of another part.',
    build: { ...moveStored(sound, 'stale-mapping', 0.07, { ...usualSpot, at: 0 }), product: 'Bench pad, stale' },
  },
};

export const demoNames = Object.keys(demos) as readonly DemoName[];

/** The demo of that name; an unknown name is answered with the names there are. */
export function findDemo(name: string): Result<DemoName> {
  const found = demoNames.find((known) => known === name);
  if (found !== undefined) return done(found);
  return failed('demo-unknown', `There is no demo pad called "${name}"; choose one of ${demoNames.join(', ')}.`);
}
