/** A whole draw by its seed: pad, parts, kept numbers and hand, with faults or one slip, or sound. */
import { Chance } from './chance.ts';
import { drawPart } from './draw-part.ts';
import type { Sound } from './fault.ts';
import { faults, type FaultName } from './faults.ts';
import { gateShapes, type GateShape } from './gate.ts';
import { drawStyle } from './hand-style.ts';
import { drawPad, type PadKind } from './pad-plan.ts';
import type { Slip } from './slips.ts';
import { numbersFor, otherNumbers } from './stored-numbers.ts';
import type { Unit } from './unit.ts';

export interface FaultWish {
  readonly name: FaultName;
  readonly size: number;
}

export interface Wish {
  readonly seed: number;
  readonly pad: PadKind;
  /** Null for any, most of them rings. */
  readonly gate: GateShape | null;
  /** One after the other on the same part; none for a sound one. */
  readonly faults: readonly FaultWish[];
  readonly slip: Slip | null;
}

const RINGS = 0.6;

/**
 * A sensor pad keeps numbers that were made for the part as it is. Behind a pad's own mapping such numbers would take most faults of
 * shape away, and nobody could see them: there they are those of the part before its fault.
 */
export function drawUnit({ seed, pad, gate, faults: wished, slip }: Wish): Unit {
  const chance = new Chance(seed, 'unit');
  const shape = gate ?? (chance.happens(RINGS) ? 'round' : chance.pick([...gateShapes]));
  const plan = drawPad(pad, new Chance(seed, 'pad'));
  const sound: Sound = { part: drawPart(shape, chance), plan, stale: 0 };
  const right = drawPart(shape, chance);
  const drawn = wished.reduce(
    (so, { name, size }, at) => faults[name].apply(so, size, new Chance(seed, at === 0 ? 'fault' : `fault ${at}`)),
    sound,
  );
  const made = (part: Sound['part'], name: string) => numbersFor(part, drawn.plan, new Chance(seed, `numbers ${name}`));
  const kept = made(plan.domain === 'sensor' ? drawn.part : sound.part, 'left');
  return {
    seed,
    plan: drawn.plan,
    parts: { left: drawn.part, right },
    stored: {
      left: drawn.stale === 0 ? kept : otherNumbers(kept, drawn.stale, new Chance(seed, 'stale')),
      right: made(right, 'right'),
    },
    style: drawStyle(plan.rateHz, new Chance(seed, 'style')),
    slip,
  };
}
