/** Whether a chain hides every deflection up to a radius. */
import type { Stage } from './chain.ts';
import { outputOf } from './output.ts';
import type { ChainFunction } from './run-chain.ts';
import { silentRadius } from './silent-radius.ts';

const RINGS = 8;
/** The border itself counts as inside: room for the rounding of its points. */
const ROUNDING = 1e-12;

/**
 * True if the chain gives 0 all over the disc |d| ≤ radius. Looked at on eight rings at every whole degree, which meets
 * each stepped sector, and at the centres of blended sectors, where their edges are smallest.
 */
export function hidesDisc(run: ChainFunction, stages: readonly Stage[], radius: number): boolean {
  if (radius <= silentRadius(run, stages)) return true;
  const out = new Float64Array(2);
  const rays = [...wholeDegrees, ...stages.flatMap(blendedCentres)];
  if (outputOf(run, 0, 0, out) > 0) return false;
  for (let ring = RINGS; ring > 0; ring -= 1) {
    const m = ((radius * ring) / RINGS) * (1 - ROUNDING);
    for (const { cos, sin } of rays) if (outputOf(run, m * cos, m * sin, out) > 0) return false;
  }
  return true;
}

interface Ray {
  readonly cos: number;
  readonly sin: number;
}

const wholeDegrees: readonly Ray[] = Array.from({ length: 360 }, (_, degrees) => ray(degrees / 360));

function blendedCentres(stage: Stage): Ray[] {
  if (!('zone' in stage) || stage.zone !== 'sector' || !stage.blend) return [];
  const count = stage.sectors.length;
  return stage.sectors.map((_, index) => ray(index / count));
}

function ray(turns: number): Ray {
  return { cos: Math.cos(2 * Math.PI * turns), sin: Math.sin(2 * Math.PI * turns) };
}
