/** What the second blind test goes through, cell by cell: so many draws of one kind on one kind of pad. */
import { Chance, hashOf } from './chance.ts';
import type { Part } from './demands.ts';
import type { FaultWish, Wish } from './draw-unit.ts';
import { faultNames, type FaultName } from './faults.ts';
import { gateShapes } from './gate.ts';
import type { PadKind } from './pad-plan.ts';
import { choosePairs, pairsOf } from './pairs.ts';
import { gradedSizes } from './sizes.ts';
import { slips } from './slips.ts';

export interface Cell {
  readonly part: Part;
  /** The fault, the slip, the gate of sound sticks; `two faults`. */
  readonly name: string;
  readonly pad: PadKind;
  readonly wishes: readonly Wish[];
}

/** The size of a fault that is seen half of the time on a kind of pad; null where none is known. */
export type SizeOf = (pad: PadKind, name: FaultName) => number | null;

/** Draws depend on seed, part, name and number alone, so that a cell is the same whatever else is run. */
function cellOf(
  { part, name, pad }: Omit<Cell, 'wishes'>,
  seed: number,
  units: number,
  wishOf: (drawSeed: number, at: number) => Pick<Wish, 'gate' | 'faults' | 'slip'>,
): Cell {
  const wishes = Array.from({ length: units }, (_, at) => {
    const drawSeed = hashOf(`${seed}/${part}/${name}/${pad}/${at}`);
    return { ...wishOf(drawSeed, at), pad, seed: drawSeed };
  });
  return { part, name, pad, wishes };
}

export function soundCells(seed: number, units: number, pads: readonly PadKind[]): Cell[] {
  return gateShapes.flatMap((gate) =>
    pads.map((pad) =>
      cellOf({ part: 'sound', name: gate, pad }, seed, units, () => ({ gate, faults: [], slip: null })),
    ),
  );
}

export function slipCells(seed: number, units: number, pads: readonly PadKind[]): Cell[] {
  return slips.flatMap((slip) =>
    pads.map((pad) => cellOf({ part: 'slip', name: slip, pad }, seed, units, () => ({ gate: null, faults: [], slip }))),
  );
}

/** Counts of the sensors come before any band of the firmware. */
export function padsWith(name: FaultName, pads: readonly PadKind[]): readonly PadKind[] {
  return name === 'firmware-band' ? pads.filter((pad) => !pad.startsWith('sensor')) : pads;
}

/** A fault without degrees is drawn as it is; `near` has none such. */
export function faultCell(
  part: 'far' | 'near',
  { name, pad }: { readonly name: FaultName; readonly pad: PadKind },
  halfSeen: number,
  seed: number,
  units: number,
): Cell {
  const isGraded = gradedSizes(name) !== null;
  return cellOf({ part: isGraded ? part : 'whole', name, pad }, seed, units, (drawSeed) => {
    const times = part === 'near' ? 1.5 : 2 * 2 ** new Chance(drawSeed, 'times').next();
    return { gate: null, faults: [{ name, size: isGraded ? halfSeen * times : 1 }], slip: null };
  });
}

/** Draws of one size of a curve; equal numbers of all sizes are the same sticks. */
export function curveWishes(fault: FaultWish, pad: PadKind, seed: number, units: number): Wish[] {
  return Array.from({ length: units }, (_, at) => ({
    seed: hashOf(`${seed}/curve/${fault.name}/${pad}/${at}`),
    pad,
    gate: null,
    faults: [fault],
    slip: null,
  }));
}

const TIMES_OF_TWO = 3;

/** Two faults at 3 times their half-visible sizes, of those that have one on this pad. */
export function pairCell(pad: PadKind, sizeOf: SizeOf, seed: number, units: number): Cell {
  const domain = pad.startsWith('sensor') ? 'sensor' : 'reported';
  const known = faultNames.filter((name) => padsWith(name, [pad]).length > 0 && sizeOf(pad, name) !== null);
  const chosen = choosePairs(pairsOf(known, domain), units, new Chance(seed, `pairs ${pad}`));
  const wishOf = (name: FaultName): FaultWish => {
    const size = sizeOf(pad, name) ?? Number.NaN;
    return { name, size: gradedSizes(name) === null ? 1 : TIMES_OF_TWO * size };
  };
  return cellOf({ part: 'pair', name: 'two faults', pad }, seed, chosen.length, (_, at) => ({
    gate: null,
    faults: (chosen[at] ?? []).map(wishOf),
    slip: null,
  }));
}
