/** The gate: how far the stick can be pushed. */
import type { Pair } from '../pad/stick.ts';
import type { GateBuild } from './build.ts';

const SIDE = Math.PI / 4;

/** Distance from the gate's centre to its edge in a direction (radians counter-clockwise from +x), as a tilt. */
export function gateRadius(gate: GateBuild, angle: number): number {
  const uneven = wavesAt(gate, angle);
  if (gate.shape === 'round') return gate.radius + uneven;
  const fromMiddleOfSide = angle - SIDE * Math.floor(angle / SIDE) - SIDE / 2;
  return (gate.radius * Math.cos(SIDE / 2)) / Math.cos(fromMiddleOfSide) + uneven;
}

/** No direction of the gate is nearer than this: within it nothing is stopped. */
function leastRadius({ shape, radius, waves }: GateBuild): number {
  let least = shape === 'round' ? radius : radius * Math.cos(SIDE / 2);
  for (const { size } of waves ?? []) least -= Math.abs(size);
  return least;
}

function wavesAt({ waves }: GateBuild, angle: number): number {
  let sum = 0;
  for (const { fold, size, phaseDegrees } of waves ?? [])
    sum += size * Math.cos(fold * angle - (phaseDegrees * Math.PI) / 180);
  return sum;
}

/** Where the stick ends up when a hand pushes it to a tilt: there, or where the gate stops it on the way outward. */
export function stopAtGate(gate: GateBuild, tilt: Pair): Pair {
  const x = tilt.x - gate.centre.x;
  const y = tilt.y - gate.centre.y;
  const wanted = Math.hypot(x, y);
  if (wanted < leastRadius(gate)) return tilt;
  const most = gateRadius(gate, Math.atan2(y, x));
  if (wanted <= most) return tilt;
  return { x: gate.centre.x + (x * most) / wanted, y: gate.centre.y + (y * most) / wanted };
}
