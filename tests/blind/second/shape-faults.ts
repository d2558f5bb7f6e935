/** Faults of where a stick stands and what its sensors make of it. */
import type { Chance } from './chance.ts';
import { changePart, type Fault } from './fault.ts';
import { FULL_TILT } from './gate.ts';
import type { AxisLaw, Part } from './part.ts';
import { plus, polar } from './plane.ts';

/** Sees to one half of one axis. */
function changeSide(part: Part, chance: Chance, change: (law: AxisLaw, side: 'plusGain' | 'minusGain') => AxisLaw) {
  const axis = chance.pick(['x', 'y']);
  return { [axis]: change(part[axis], chance.pick(['plusGain', 'minusGain'])) };
}

export const shapeFaults = {
  /** The spring holds the stick so far from the middle of its sensors, % of the half travel, in any direction. */
  'off-centre-part': {
    unit: '% of the half travel',
    apply: (sound, size, chance) => {
      const by = polar((FULL_TILT * size) / 100, chance.between(0, 360));
      return changePart(sound, { springOff: plus(sound.part.springOff, by) });
    },
  },
  /** The part stands on its seat tilted by so many degrees, spring and sensors with it; the gate in the shell stays. */
  'seat-tilt': {
    unit: '° of 23',
    apply: (sound, size, chance) =>
      changePart(sound, { seat: plus(sound.part.seat, polar(size, chance.between(0, 360))) }),
  },
  /** The sensors' axes stand so many degrees from a right angle. */
  skew: {
    unit: '°',
    apply: (sound, size, chance) => changePart(sound, { skew: sound.part.skew + size * chance.pick([-1, 1]) }),
  },
  /** One half of one axis gives so much less than its gain says. */
  'short-side': {
    unit: '% of the half travel',
    apply: (sound, size, chance) => {
      const change = changeSide(sound.part, chance, (law, side) => ({ ...law, [side]: law[side] * (1 - size / 100) }));
      return changePart(sound, change);
    },
  },
  /** The whole part is turned about its shaft. */
  turned: {
    unit: '°',
    apply: (sound, size, chance) => changePart(sound, { turned: sound.part.turned + size * chance.pick([-1, 1]) }),
  },
  /** The converter or the sensor sees nothing of the last % of one half travel, taken where the nominal gate is. */
  clipped: {
    unit: '% of the half travel',
    apply: (sound, size, chance) => {
      const [axis, side] = [chance.pick(['x', 'y']), chance.pick([1, -1])];
      const { offset, plusGain, minusGain } = sound.part[axis];
      const end = side * offset + (side === 1 ? plusGain : minusGain);
      return changePart(sound, { clip: { axis, side, at: end * (1 - size / 100) } });
    },
  },
  /** A third power in both sensors' laws: on a ring, the reach at the diagonals is this much below that of the axes. */
  curved: {
    unit: '% of the reach',
    apply: (sound, size) => {
      const cubic = size / 100 / (0.5 - size / 100);
      return changePart(sound, { x: { ...sound.part.x, cubic }, y: { ...sound.part.y, cubic }, geometry: 'flat' });
    },
  },
  /** Shared ground: so much of one axis' deflection is added to the other. */
  'shared-ground': {
    unit: '% of the other axis',
    apply: (sound, size, chance) => {
      const share = (size / 100) * chance.pick([-1, 1]);
      return changePart(sound, { shared: chance.happens(0.5) ? { x: share, y: 0 } : { x: 0, y: share } });
    },
  },
} as const satisfies Readonly<Record<string, Fault>>;
