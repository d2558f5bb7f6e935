/** The cells that a run goes through, in groups that are drawn together, and the faults that no size is known of. */
import { faultCell, padsWith, pairCell, slipCells, soundCells, type Cell, type SizeOf } from './cells.ts';
import type { Part } from './demands.ts';
import { faultNames, type FaultName } from './faults.ts';
import type { PadKind } from './pad-plan.ts';
import { gradedSizes } from './sizes.ts';

export interface Plan {
  readonly seed: number;
  readonly pads: readonly PadKind[];
  readonly units: (part: Part) => number;
  /** By the name of a fault, or `sound`, `slip`, `pair`. */
  readonly isAsked: (name: string) => boolean;
}

export interface FaultOnPad {
  readonly name: FaultName;
  readonly pad: PadKind;
}

export function faultsOnPads({ pads, isAsked }: Plan): FaultOnPad[] {
  return faultNames.filter(isAsked).flatMap((name) => padsWith(name, pads).map((pad) => ({ name, pad })));
}

export function groupsOf(plan: Plan, sizeOf: SizeOf): Cell[][] {
  const { seed, pads, units, isAsked } = plan;
  const groups = [
    isAsked('sound') ? soundCells(seed, units('sound'), pads) : [],
    isAsked('slip') ? slipCells(seed, units('slip'), pads) : [],
    ...faultNames.map((name) => faultCells(plan, sizeOf, name)),
    isAsked('pair') ? pads.map((pad) => pairCell(pad, sizeOf, seed, units('pair'))) : [],
  ];
  return groups.map((group) => group.filter(({ wishes }) => wishes.length > 0)).filter((group) => group.length > 0);
}

function faultCells(plan: Plan, sizeOf: SizeOf, name: FaultName): Cell[] {
  const { seed, units } = plan;
  const isGraded = gradedSizes(name) !== null;
  return faultsOnPads(plan)
    .filter((one) => one.name === name)
    .flatMap((one) => {
      const size = sizeOf(one.pad, name);
      if (size === null) return [];
      const far = faultCell('far', one, size, seed, units(isGraded ? 'far' : 'whole'));
      return isGraded ? [far, faultCell('near', one, size, seed, units('near'))] : [far];
    });
}
