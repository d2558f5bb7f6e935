/** Faults of a stick as a whole: of its part, its fit in the shell and its spring. */
import type { Pair } from '../pad/stick.ts';
import type { StickBuild } from './build.ts';
import { idealCount } from './sensor.ts';

/** Tilt of the part that counts as 1: 23° is what a maker's sheet of small stick modules allows in each direction. */
export const FULL_TILT_DEGREES = 23;

/** The sensors' middles stand off by a tilt. */
export function moveMiddle(stick: StickBuild, by: Pair): StickBuild {
  const { x, y } = stick;
  return {
    ...stick,
    x: { ...x, middle: x.middle + x.up * x.gain * by.x },
    y: { ...y, middle: y.middle + y.up * y.gain * by.y },
  };
}

/** The part sits tilted: seen from its rest the shell's gate stands to the other side. */
export function tiltSeat(stick: StickBuild, by: Pair): StickBuild {
  const { centre } = stick.gate;
  return { ...stick, gate: { ...stick.gate, centre: { x: centre.x - by.x, y: centre.y - by.y } } };
}

/** The two axes lean toward each other by so many degrees, each by half: sin(skew) = 2a/(1 + a²) with a the cross-talk. */
export function skewAxes(stick: StickBuild, degrees: number): StickBuild {
  const more = Math.tan((degrees * Math.PI) / 360);
  const { xFromY, yFromX } = stick.crossTalk;
  return { ...stick, crossTalk: { xFromY: xFromY + more, yFromX: yFromX + more } };
}

/** The spring holds the stick so loosely that friction keeps it up to this tilt; never better than it was. */
export function loosen(stick: StickBuild, band: number): StickBuild {
  const { friction } = stick.back;
  return {
    ...stick,
    back: { ...stick.back, friction: { x: Math.max(band, friction.x), y: Math.max(band, friction.y) } },
  };
}

/**
 * The spring swings past its rest by this share of the way back: damping ratio ζ with overshoot = exp(−πζ/√(1 − ζ²)) of a
 * second-order system, friction left aside.
 */
export function undamp(stick: StickBuild, overshoot: number): StickBuild {
  if (overshoot <= 0) return stick;
  const logarithm = Math.log(overshoot);
  return { ...stick, back: { ...stick.back, dampingRatio: -logarithm / Math.hypot(Math.PI, logarithm) } };
}

/** Count at the gate on one side of an axis. */
export function extreme(stick: StickBuild, axis: 'x' | 'y', side: 1 | -1): number {
  return idealCount(stick[axis], side * stick.gate.radius + stick.gate.centre[axis]);
}
