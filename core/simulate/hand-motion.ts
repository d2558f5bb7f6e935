/** What a hand does with a stick: targets over time, at a human's speed and with a human's wobble. */
import type { Pair } from '../pad/stick.ts';
import type { Chance } from './chance.ts';

/** One thing a hand does. Presses past the gate, which stops the stick. */
export interface HandMotion {
  /** Where the hand wants the stick after so many seconds; null once it has let go. */
  target(seconds: number): Pair | null;
}

export type TurnWay = 'clockwise' | 'counterClockwise';

/** How far past a gate of radius 1 a hand aims when it pushes against the gate. */
const PRESSURE = 1.25;
/** The same for a slow sweep, which ends gently. */
const SWEEP_PRESSURE = 1.12;
/** A turn takes a careful hand about this long. */
const TURN_SECONDS = 1.5;
/** More than was asked for, so that the last turn is surely whole. */
const TURN_MORE_DEGREES = 40;

/** Pushes toward an angle (degrees counter-clockwise from +x), holds, lets go; without an end it holds on. */
export function push(from: Pair, towardDegrees: number, chance: Chance, end: 'letGo' | 'holdOn'): HandMotion {
  const travel = 0.22 + 0.1 * chance.next();
  const held = end === 'letGo' ? travel + 0.3 + 0.15 * chance.next() : Number.POSITIVE_INFINITY;
  const aim = towardDegrees + 3 * chance.normal();
  const aimWobble = wobble(chance, 2.5);
  const pressureWobble = wobble(chance, 0.06);
  return {
    target(seconds) {
      if (seconds >= held) return null;
      return between(from, polar(PRESSURE + pressureWobble(seconds), aim + aimWobble(seconds)), seconds / travel);
    },
  };
}

/** Pushes to the gate and turns along it; lets go after the turns asked for (endless: Infinity). */
export function turn(from: Pair, turns: number, way: TurnWay, chance: Chance): HandMotion {
  const reach = 0.3;
  const start = Math.hypot(from.x, from.y) > 0.2 ? (Math.atan2(from.y, from.x) * 180) / Math.PI : 360 * chance.next();
  const degreesPerSecond = 360 / (TURN_SECONDS * (0.9 + 0.2 * chance.next()));
  const pace = unevenPace(chance);
  const pressureWobble = wobble(chance, 0.06);
  const total = 360 * turns + TURN_MORE_DEGREES;
  return {
    target(seconds) {
      const turned = degreesPerSecond * pace(Math.max(0, seconds - reach));
      if (turned >= total) return null;
      const angle = way === 'counterClockwise' ? start + turned : start - turned;
      return between(from, polar(PRESSURE + pressureWobble(seconds), angle), seconds / reach);
    },
  };
}

/** A slow sweep from gate to gate takes a careful hand about this long. */
const SWEEP_SECONDS = 3;

/**
 * Goes to the gate opposite, waits there, sweeps slowly through the rest to the gate at the angle (degrees counter-clockwise
 * from +x), holds a moment and lets go. The aim is a human's: some degrees off, and the line a little wavy.
 */
export function sweep(from: Pair, towardDegrees: number, chance: Chance): HandMotion {
  const reach = 0.4;
  const start = reach + 0.25 + 0.1 * chance.next();
  const length = SWEEP_SECONDS * (0.85 + 0.3 * chance.next());
  const end = start + length + 0.3 + 0.1 * chance.next();
  const aim = towardDegrees + 2 * chance.normal();
  const sideways = wobble(chance, 0.025, 0.4);
  const pace = unevenPace(chance);
  const along = (seconds: number): number => {
    const part = pace(Math.min(length, Math.max(0, seconds - start))) / pace(length);
    return SWEEP_PRESSURE * (2 * part - 1);
  };
  return {
    target(seconds) {
      if (seconds >= end) return null;
      const forward = polar(along(seconds), aim);
      const side = polar(sideways(seconds), aim + 90);
      return between(from, { x: forward.x + side.x, y: forward.y + side.y }, seconds / reach);
    },
  };
}

/** Pushes to full tilt, holds shortly and lets go all at once, as a thumb slips off. */
export function flick(from: Pair, towardDegrees: number, chance: Chance): HandMotion {
  const travel = 0.15 + 0.05 * chance.next();
  const end = travel + 0.2 + 0.1 * chance.next();
  const aim = towardDegrees + 3 * chance.normal();
  const pressureWobble = wobble(chance, 0.05);
  return {
    target(seconds) {
      if (seconds >= end) return null;
      return between(from, polar(PRESSURE + pressureWobble(seconds), aim), seconds / travel);
    },
  };
}

/** Plays about without end, all over the inside of the gate. */
export function wander(from: Pair, chance: Chance): HandMotion {
  const x = wobble(chance, 1.1, 0.3);
  const y = wobble(chance, 1.1, 0.3);
  return { target: (seconds) => between(from, { x: x(seconds), y: y(seconds) }, seconds / 0.5) };
}

function polar(radius: number, degrees: number): Pair {
  const angle = (degrees * Math.PI) / 180;
  return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
}

/**
 * On the way between two tilts with the least jerk, as a hand moves from point to point: 10τ³ − 15τ⁴ + 6τ⁵
 * (Flash and Hogan, Journal of Neuroscience 5, 1985).
 */
function between(from: Pair, to: Pair, part: number): Pair {
  const p = Math.min(1, Math.max(0, part));
  const share = p * p * p * (10 - 15 * p + 6 * p * p);
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

/** A smooth unsteadiness of about the given size: three slow sines with phases of their own. */
function wobble(chance: Chance, size: number, slowestHz = 0.7): (seconds: number) => number {
  const waves = [0.6, 0.3, 0.15].map((share, index) => ({
    size: size * share,
    hz: slowestHz * (1 + 1.7 * index) * (0.8 + 0.4 * chance.next()),
    phase: 2 * Math.PI * chance.next(),
  }));
  return (seconds) =>
    waves.reduce((sum, wave) => sum + wave.size * Math.sin(2 * Math.PI * wave.hz * seconds + wave.phase), 0);
}

/** Seconds of steady motion that so many seconds of a human's come to: faster and slower by up to a quarter, never back. */
function unevenPace(chance: Chance): (seconds: number) => number {
  const waves = [0.15, 0.1].map((share) => {
    const hz = 0.4 + 1.2 * chance.next();
    return { size: share / (2 * Math.PI * hz), hz, phase: 2 * Math.PI * chance.next() };
  });
  return (seconds) =>
    waves.reduce(
      (sum, wave) => sum + wave.size * (Math.sin(2 * Math.PI * wave.hz * seconds + wave.phase) - Math.sin(wave.phase)),
      seconds,
    );
}
