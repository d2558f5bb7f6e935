/** Draws a healthy pad from a sound population: stated tolerances, a seed, no fault. */
import type { Pair, StickId } from '../pad/stick.ts';
import type { FirmwareMapping, GateBuild, PadBuild, SensorBuild, SensorLaw, StickBuild } from './build.ts';
import { createChance, type Chance } from './chance.ts';
import { extreme, FULL_TILT_DEGREES } from './fault-changes.ts';

/** What may be asked of a drawn pad; everything else is drawn. */
export interface UnitWish {
  readonly family?: PadBuild['family'];
  readonly gate?: GateBuild['shape'];
  readonly onChange?: boolean;
  readonly rateHz?: number;
  readonly adcBits?: number;
}

/** Nothing of a sound population lies further out than this many standard deviations: what does is sorted out at the maker's. */
const SORTED_OUT = 2;

/** Standard deviations of a sound population, in the units named. */
export const soundTolerances = {
  /** Of the sensor's middle about the converter's, counts. */
  middle: 7,
  /** Of one axis's gain against the pad's, a share. */
  gain: 0.006,
  /** Of the response on one side of an axis against the other, a share. */
  sides: 0.002,
  turnDegrees: 1,
  /** Of each axis's cross-talk: 0.4° of skew each. */
  crossTalk: 0.007,
  seatDegrees: 0.12,
  /** Of the gate's radius, a share. */
  gate: 0.008,
  /** Of each wave of the gate's radius, as a tilt: threefold, and five- to sevenfold. */
  slowWave: 0.0003,
  fastWave: 0.0008,
  /** Of a stored centre about the rest, counts, and of a stored edge about 2 % inside of what the gate allows, a share. */
  storedCentre: 3,
  storedEdge: 0.003,
} as const;

/** The pad with this seed. Both sticks are drawn; the same seed gives the same pad for ever. */
export function drawUnit(seed: number, wish: UnitWish = {}): PadBuild {
  const chance = createChance(seed, 31);
  const gain = 1150 + 200 * chance.next();
  const left = drawStick(chance, gain, wish);
  const right = drawStick(chance, gain, wish);
  const firmware: Record<StickId, FirmwareMapping> = {
    left: drawStored(left, chance),
    right: drawStored(right, chance),
  };
  const rateHz = wish.rateHz ?? 500;
  return {
    product: `Bench pad, drawn ${seed}`,
    family: wish.family ?? 'sensor',
    sticks: { left, right },
    firmware,
    layers: { user: null, factory: firmware },
    intervalMicros: Math.round(1e6 / rateHz),
    jitterMicros: Math.round((0.04 + 0.08 * chance.next()) * (1e6 / rateHz)),
    onChange: wish.onChange ?? false,
  };
}

function drawStick(chance: Chance, gain: number, wish: UnitWish): StickBuild {
  const law = drawLaw(chance);
  const seat = soundTolerances.seatDegrees / FULL_TILT_DEGREES;
  const back = 14 + 4 * chance.next();
  const noise = 0.8 + 0.8 * chance.next();
  return {
    gate: {
      shape: wish.gate ?? 'round',
      radius: (wish.gate === 'eightSided' ? 1.04 : 1) * (1 + soundTolerances.gate * within(chance)),
      centre: pair(chance, seat),
      waves: [3, 5, 6, 7].map((fold) => ({
        fold,
        size: (fold === 3 ? soundTolerances.slowWave : soundTolerances.fastWave) * within(chance),
        phaseDegrees: 360 * chance.next(),
      })),
    },
    back: {
      naturalHz: back,
      dampingRatio: 0.9 + 0.3 * chance.next(),
      friction: { x: 0.0035 + 0.002 * chance.next(), y: 0.0035 + 0.002 * chance.next() },
      frictionSpread: 0.35,
    },
    turnDegrees: soundTolerances.turnDegrees * within(chance),
    crossTalk: {
      xFromY: soundTolerances.crossTalk * within(chance),
      yFromX: soundTolerances.crossTalk * within(chance),
    },
    x: drawSensor(chance, gain, law, noise, 1, wish),
    // HID's habit: the count of y grows downwards.
    y: drawSensor(chance, gain, law, noise, -1, wish),
  };
}

function drawSensor(
  chance: Chance,
  gain: number,
  law: SensorLaw,
  noise: number,
  up: 1 | -1,
  wish: UnitWish,
): SensorBuild {
  const { middle, gain: gains, sides } = soundTolerances;
  return {
    middle: 2047.5 + middle * within(chance),
    gain: gain * (1 + gains * within(chance)),
    up,
    law,
    bend: 0,
    reach: { minus: 1 + sides * within(chance), plus: 1 + sides * within(chance) },
    noise: noise * (0.9 + 0.2 * chance.next()),
    clip: { low: 40, high: 4055 },
    worn: [],
    ...(wish.adcBits !== undefined && { adcBits: wish.adcBits }),
  };
}

function drawLaw(chance: Chance): SensorLaw {
  const kind = chance.next();
  if (kind < 1 / 3) return { kind: 'potentiometer' };
  if (kind < 2 / 3) return { kind: 'hall', fullDegrees: 18 + 7 * chance.next() };
  return { kind: 'tmr', saturation: 0.15 + 0.2 * chance.next() };
}

/** What the maker stored after calibrating this very stick: a centre near its middle, edges some 2 % inside of the gate. */
function drawStored(stick: StickBuild, chance: Chance): FirmwareMapping {
  const { storedCentre, storedEdge } = soundTolerances;
  const axis = (name: 'x' | 'y'): FirmwareMapping['x'] => {
    const { middle } = stick[name];
    const edges = ([1, -1] as const).map(
      (side) => middle + (extreme(stick, name, side) - middle) * (0.98 + storedEdge * within(chance)),
    );
    return {
      min: Math.round(Math.min(...edges)),
      centre: Math.round(middle + storedCentre * within(chance)),
      max: Math.round(Math.max(...edges)),
    };
  };
  return { x: axis('x'), y: axis('y') };
}

function pair(chance: Chance, size: number): Pair {
  return { x: size * within(chance), y: size * within(chance) };
}

function within(chance: Chance): number {
  for (;;) {
    const normal = chance.normal();
    if (Math.abs(normal) <= SORTED_OUT) return normal;
  }
}
