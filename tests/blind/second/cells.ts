/** What the second blind test goes through: sound sticks, hands that slip, and faults of two sizes, by kind of pad. */
import { hashOf } from './chance.ts';
import type { Wish } from './draw-unit.ts';
import { faultNames, faults, type FaultName } from './faults.ts';
import { gateShapes } from './gate.ts';
import type { PadKind } from './pad-plan.ts';
import { slips } from './slips.ts';

/** About two and four times the size that should be seen half of the time; one size where a fault has no degrees. */
const sizes: Readonly<Record<FaultName, readonly number[]>> = {
  'off-centre-part': [4, 8],
  'seat-tilt': [1.2, 2.4],
  skew: [10, 20],
  'short-side': [6, 12],
  turned: [12, 24],
  clipped: [4, 8],
  curved: [6.5, 13],
  'shared-ground': [8, 16],
  'dead-sector': [20, 40],
  'loose-sector': [20, 40],
  'dead-spot': [2, 4],
  'worn-track': [1, 2],
  contact: [20, 40],
  spikes: [20, 40],
  noise: [6, 12],
  'slow-return': [0.6, 1.5],
  'loose-return': [2, 4],
  overshoot: [10, 20],
  'two-rests': [3, 6],
  'outlier-rest': [10, 20],
  'drifting-rest': [3, 6],
  'stale-numbers': [5, 10],
  'firmware-band': [4, 8],
  'inverted-axis': [1],
  'swapped-axes': [1],
  'trigger-stays': [20, 40],
  'trigger-dead': [1],
};

export interface Cell {
  readonly name: string;
  readonly pad: PadKind;
  readonly wishes: readonly Wish[];
}

/** Counts of the sensors come before any band of the firmware. */
function padsWith(name: FaultName, pads: readonly PadKind[]): readonly PadKind[] {
  return name === 'firmware-band' ? pads.filter((pad) => !pad.startsWith('sensor')) : pads;
}

/** Draws depend on seed, name and number alone, so that a cell is the same whatever else is run. */
export function cellsOf(seed: number, units: number, pads: readonly PadKind[]): Cell[] {
  const cell = (name: string, pad: PadKind, wish: Omit<Wish, 'seed' | 'pad'>): Cell => ({
    name,
    pad,
    wishes: Array.from({ length: units }, (_, at) => ({ ...wish, pad, seed: hashOf(`${seed}/${name}/${pad}/${at}`) })),
  });
  return [
    ...gateShapes.flatMap((gate) => pads.map((pad) => cell(`sound ${gate}`, pad, { gate, fault: null, slip: null }))),
    ...slips.flatMap((slip) => pads.map((pad) => cell(`slip ${slip}`, pad, { gate: null, fault: null, slip }))),
    ...faultNames.flatMap((name) =>
      sizes[name].flatMap((size) =>
        padsWith(name, pads).map((pad) =>
          cell(`${name} ${size} ${faults[name].unit}`.trim(), pad, { gate: null, fault: { name, size }, slip: null }),
        ),
      ),
    ),
  ];
}
