/** Faults of the pad about a sound part. */
import { changePlan, type Fault } from './fault.ts';

export const padFaults = {
  /** The pad keeps the numbers of another part: middle and edges moved by so much, each axis one way or the other. */
  'stale-numbers': {
    unit: '% of the half travel',
    apply: (sound, size) => ({ ...sound, stale: size / 100 }),
  },
  /** The pad reports its middle for all within this share of the half field, and goes on from there or jumps. */
  'firmware-band': {
    unit: '% of the half field',
    apply: (sound, size, chance) =>
      changePlan(sound, {
        band: { kind: chance.pick(['dead', 'snap']), round: chance.happens(0.5), size: size / 100 },
      }),
  },
  /** One axis counts the other way than the pad's profile or descriptor says. */
  'inverted-axis': {
    unit: '',
    apply: (sound, _size, chance) =>
      changePlan(sound, {
        inverted: chance.pick([
          { x: true, y: false },
          { x: false, y: true },
        ]),
      }),
  },
  /** x arrives as y and y as x. */
  'swapped-axes': { unit: '', apply: (sound) => changePlan(sound, { swapped: true }) },
  /** After it was pulled once, a trigger stays at so much of its travel. */
  'trigger-stays': {
    unit: '% of its travel',
    apply: (sound, size, chance) =>
      changePlan(sound, { trigger: { side: chance.pick(['left', 'right']), stays: size / 100 } }),
  },
  /** A trigger shows nothing of being pulled. */
  'trigger-dead': {
    unit: '',
    apply: (sound, _size, chance) =>
      changePlan(sound, { trigger: { side: chance.pick(['left', 'right']), stays: 'dead' } }),
  },
} as const satisfies Readonly<Record<string, Fault>>;
