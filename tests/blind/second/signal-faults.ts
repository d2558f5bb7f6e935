/** Faults of a sound sensor's signal on its way. */
import type { Chance } from './chance.ts';
import { changePart, type Fault, type Sound } from './fault.ts';
import type { Axes, Goes, Lost } from './lost-signal.ts';

const anyGoes = (chance: Chance): Goes => chance.pick(['middle', 'low', 'high', 'anywhere']);
const anyAxes = (chance: Chance): Axes => chance.pick(['x', 'y', 'both']);
/** A place on the way, clear of the rest and of the gate. */
const anyPlace = (chance: Chance): number => chance.between(0.15, 0.85) * chance.pick([-1, 1]);

function lose(sound: Sound, lost: Lost): Sound {
  return changePart(sound, { lost: [...sound.part.lost, lost] });
}

/** Where an axis stands at its middle, or at the end it is lost to, the loss shows nothing: the sector lies where it is felt. */
function loseInSector(sound: Sound, size: number, share: number, chance: Chance): Sound {
  const axes = anyAxes(chance);
  const isForward = chance.happens(0.5);
  const straight = axes === 'both' ? chance.between(0, 360) : (axes === 'x' ? 0 : 90) + (isForward ? 0 : 180);
  const toward = straight + chance.between(-55, 55);
  // Right is the high end of x, up the low end of y.
  const otherEnd = (axes === 'x') === isForward ? 'low' : 'high';
  const goes = chance.pick(['middle', 'anywhere', axes === 'both' ? anyGoes(chance) : otherEnd]);
  return lose(sound, { kind: 'sector', toward, width: size, share, axes, goes });
}

export const signalFaults = {
  /** The signal of one axis or both is lost while the stick presses on the rim within so many degrees of the gate. */
  'dead-sector': { unit: '° of the gate', apply: (sound, size, chance) => loseInSector(sound, size, 1, chance) },
  /** The same, on a third of the visits. */
  'loose-sector': { unit: '° of the gate', apply: (sound, size, chance) => loseInSector(sound, size, 1 / 3, chance) },
  /** A bare place on the way of one wiper, % of its full travel (two half travels) wide. */
  'dead-spot': {
    unit: '% of the travel',
    apply: (sound, size, chance) =>
      lose(sound, {
        kind: 'spot',
        axis: chance.pick(['x', 'y']),
        at: anyPlace(chance),
        width: (2 * size) / 100,
        goes: anyGoes(chance),
      }),
  },
  /** A stretch of one track, % of the full travel wide, where the contact wanders by σ 4 % of the half travel. */
  'worn-track': {
    unit: '% of the travel',
    apply: (sound, size, chance) =>
      lose(sound, {
        kind: 'worn',
        axis: chance.pick(['x', 'y']),
        at: anyPlace(chance),
        width: (2 * size) / 100,
        unsteady: 0.04,
      }),
  },
  /** So often in 10,000 reports the signal of one axis or both is gone, for 1 to 40 ms. */
  contact: {
    unit: 'in 10,000 reports',
    apply: (sound, size, chance) =>
      lose(sound, { kind: 'contact', once: 10_000 / size, axes: anyAxes(chance), goes: anyGoes(chance) }),
  },
  /** So many of 10,000 reports hold a value of one axis that was never there. */
  spikes: { unit: 'in 10,000 reports', apply: (sound, size) => lose(sound, { kind: 'spike', once: 10_000 / size }) },
  /** Noise of both axes, white and slow, so many times a sound part's. */
  noise: {
    unit: 'times',
    apply: (sound, size) => changePart(sound, { noise: { ...sound.part.noise, white: sound.part.noise.white * size } }),
  },
} as const satisfies Readonly<Record<string, Fault>>;
