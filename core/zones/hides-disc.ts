/** Whether a chain hides every deflection up to a radius. */
import type { Stage } from './chain.ts';
import { outputOf } from './output.ts';
import type { ChainFunction } from './run-chain.ts';

const RINGS = 8;
/** The border itself counts as inside: room for the rounding of its points. */
const ROUNDING = 1e-12;

/**
 * True if the chain gives 0 all over the disc |d| ≤ radius. Looked at on eight rings at every whole degree, which meets
 * each stepped sector, and at the centres of blended sectors, where their edges are smallest.
 */
export function hidesDisc(run: ChainFunction, stages: readonly Stage[], radius: number): boolean {
  const out = new Float64Array(2);
  const angles = [...wholeDegrees, ...stages.flatMap(blendedCentres)];
  if (outputOf(run, 0, 0, out) > 0) return false;
  for (let ring = RINGS; ring > 0; ring -= 1) {
    const m = ((radius * ring) / RINGS) * (1 - ROUNDING);
    for (const turn of angles) if (outputOf(run, m * Math.cos(turn), m * Math.sin(turn), out) > 0) return false;
  }
  return true;
}

const wholeDegrees: readonly number[] = Array.from({ length: 360 }, (_, degrees) => (degrees * Math.PI) / 180);

function blendedCentres(stage: Stage): number[] {
  if (!('zone' in stage) || stage.zone !== 'sector' || !stage.blend) return [];
  const count = stage.sectors.length;
  return stage.sectors.map((_, index) => (2 * Math.PI * index) / count);
}
