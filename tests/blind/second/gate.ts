/** The opening in the shell that stops a stick: a ring or a many-sided hole with rounded corners, as uneven as moulded parts are. */
import type { Chance } from './chance.ts';

/** Full tilt of every stick here, degrees. */
export const FULL_TILT = 23;

export const gateShapes = ['round', 'eightSided', 'sixSided', 'fourSided'] as const;
export type GateShape = (typeof gateShapes)[number];

interface Wave {
  readonly fold: number;
  /** Share of the radius. */
  readonly size: number;
  readonly toward: number;
}

export interface Gate {
  readonly shape: GateShape;
  /** Direction of one corner. */
  readonly corner: number;
  /** Radius of the corners in shares of the distance from the middle to a side; 1 would be a ring. */
  readonly rounding: number;
  readonly waves: readonly Wave[];
  /** How much further full pressure drives the stick into the rim, share of the radius. */
  readonly give: number;
}

const sides: Readonly<Record<GateShape, number>> = { round: 0, eightSided: 8, sixSided: 6, fourSided: 4 };
const SHAPE_NOISE = 0.003;

/** Waves of folds 2 to 8; fold 1 is a middle that is off, which the seat of the part brings. */
export function drawGate(shape: GateShape, chance: Chance): Gate {
  const waves = [2, 3, 4, 5, 6, 7, 8].map((fold) => ({
    fold,
    size: SHAPE_NOISE * chance.normal(),
    toward: chance.between(0, 360),
  }));
  // Eight sides have a notch in each main direction, four stand with a flat side to each.
  const corner = { round: 0, eightSided: 0, sixSided: chance.pick([0, 30]), fourSided: 45 }[shape];
  const rounding = shape === 'eightSided' ? chance.between(0.15, 0.4) : chance.between(0.3, 0.55);
  return { shape, corner, rounding, waves, give: chance.between(0, 0.003) };
}

/** Degrees of tilt at which the rim stops the stick in this direction. */
export function gateRadius(gate: Gate, degrees: number): number {
  const uneven = gate.waves.reduce(
    (sum, { fold, size, toward }) => sum + size * Math.cos((fold * (degrees - toward) * Math.PI) / 180),
    1,
  );
  return FULL_TILT * outlineOf(gate, degrees) * uneven;
}

/** A ring is 1; a many-sided hole has its sides at 1, or its corners where they are what stands in the main directions. */
function outlineOf({ shape, corner, rounding }: Gate, degrees: number): number {
  const count = sides[shape];
  if (count === 0) return 1;
  const half = Math.PI / count;
  const inner = (1 - rounding) / Math.cos(half);
  const scale = shape === 'fourSided' ? 1 : 1 / (inner + rounding);
  const step = 360 / count;
  const fromCorner = Math.abs(((((degrees - corner) % step) + 1.5 * step) % step) - step / 2) * (Math.PI / 180);
  // The round of the corner meets the side where the side's own normal leaves the round's middle.
  const meets = Math.atan2(rounding * Math.sin(half), inner + rounding * Math.cos(half));
  if (fromCorner >= meets) return scale / Math.cos(half - fromCorner);
  const across = inner * Math.sin(fromCorner);
  return scale * (inner * Math.cos(fromCorner) + Math.sqrt(rounding ** 2 - across ** 2));
}
