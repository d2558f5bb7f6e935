/** From tilt to what the two sensors say, without noise: shares of the half travel, 0 at the middle of the supply. */
import { FULL_TILT } from './gate.ts';
import type { AxisLaw, Part } from './part.ts';
import { along, directionOf, minus, polar, sizeOf, turnedBy, type Vec } from './plane.ts';

export function sensedAt(part: Part, tilt: Vec): Vec {
  const own = turnedBy(minus(tilt, part.seat), -part.turned);
  const seen = part.geometry === 'gimbal' ? frameAngles(own) : own;
  const x = lawOf(part.x, along(seen, -part.skew / 2) / FULL_TILT);
  const y = lawOf(part.y, along(seen, 90 + part.skew / 2) / FULL_TILT);
  const coupled = { x: x + part.shared.x * y, y: y + part.shared.y * x };
  return clipped(part, { x: coupled.x + part.x.offset, y: coupled.y + part.y.offset });
}

/** Angles of the two frames of a gimbal whose shaft leans by this tilt. */
function frameAngles(tilt: Vec): Vec {
  const slope = polar(Math.tan((sizeOf(tilt) * Math.PI) / 180), directionOf(tilt));
  return { x: (Math.atan(slope.x) * 180) / Math.PI, y: (Math.atan(slope.y) * 180) / Math.PI };
}

function lawOf({ plusGain, minusGain, cubic }: AxisLaw, share: number): number {
  const curved = (share + cubic * share ** 3) / (1 + cubic);
  return curved * (curved >= 0 ? plusGain : minusGain);
}

function clipped({ clip }: Part, value: Vec): Vec {
  if (clip === null) return value;
  const { axis, side, at } = clip;
  return { ...value, [axis]: side * Math.min(at, side * value[axis]) };
}
