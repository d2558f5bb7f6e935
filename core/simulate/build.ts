/**
 * How a simulated pad is built: plain data, so that every fault with its size is data too.
 * Tilts are fractions of the tilt at which a round gate of radius 1 stops the stick; x to the right, y up.
 */
import type { Pair, StickId } from '../pad/stick.ts';

/** The hole in the shell that stops the stick. */
export interface GateBuild {
  readonly shape: 'round' | 'eightSided';
  /** Of the circle, or of the corners of the eight-sided gate, which stand at 0, 45 … 315°. */
  readonly radius: number;
  /** Where the gate's centre stands as seen from the stick's own rest: not zero where the part's seat is tilted. */
  readonly centre: Pair;
}

/** The spring that brings the stick back, and the dry friction that stops it short. */
export interface ReturnBuild {
  /** Natural frequency of stick and spring. */
  readonly naturalHz: number;
  /** 1 is critical damping. */
  readonly dampingRatio: number;
  /** Half width of the band in which friction holds the stick against its spring, as a tilt, per axis. */
  readonly friction: Pair;
  /** Standard deviation of that band from release to release, as a share of it. */
  readonly frictionSpread: number;
}

/** A stretch of a worn track: in this range of the axis the reading is unsteady. */
export interface WornZone {
  /** Tilts of the sensor's own axis. */
  readonly from: number;
  readonly to: number;
  /** Standard deviation in counts, on top of the sensor's own noise. */
  readonly noise: number;
  /** Share of the readings in which the wiper lifts, and by how many counts (standard deviation) the reading then jumps. */
  readonly liftShare: number;
  readonly lift: number;
}

/** One axis of a stick: from the tilt of the part to the count of the converter. */
export interface SensorBuild {
  /** Count at no tilt. */
  readonly middle: number;
  /** Counts per unit of tilt. */
  readonly gain: number;
  /** +1 where the count grows to the right or up, −1 where it shrinks. */
  readonly up: 1 | -1;
  /** The sensor's law: response = tilt · (1 + bend · tilt²). A magnet that turns before its sensor bends a little. */
  readonly bend: number;
  /** What is left of the response on either side of no tilt; 1 is all of it. */
  readonly reach: { readonly minus: number; readonly plus: number };
  /** Standard deviation in counts. */
  readonly noise: number;
  /** The sensor gives no count outside of these. */
  readonly clip: { readonly low: number; readonly high: number };
  readonly worn: readonly WornZone[];
}

/** One stick: the part with its two sensors, its spring, and the gate it is fitted behind. */
export interface StickBuild {
  readonly gate: GateBuild;
  readonly back: ReturnBuild;
  /** How far the part sits turned in the shell, degrees counter-clockwise. */
  readonly turnDegrees: number;
  /** How much of the other axis each axis picks up. */
  readonly crossTalk: { readonly xFromY: number; readonly yFromX: number };
  readonly x: SensorBuild;
  readonly y: SensorBuild;
}

/** Per axis the counts that a pad's own firmware turns into the least, middle and largest value it reports. */
export interface FirmwareMapping {
  readonly x: { readonly min: number; readonly centre: number; readonly max: number };
  readonly y: { readonly min: number; readonly centre: number; readonly max: number };
}

export interface PadBuild {
  readonly product: string;
  /** `sensor`: 12-bit counts of the converter as they are; `plain`: 8-bit values after the firmware's own mapping. */
  readonly family: 'sensor' | 'plain';
  readonly sticks: Readonly<Record<StickId, StickBuild>>;
  /** What the firmware stores; a pad of the `sensor` family reports before it. */
  readonly firmware: Readonly<Record<StickId, FirmwareMapping>>;
  readonly intervalMicros: number;
  /** Each report leaves up to this much early or late; below half of the interval. */
  readonly jitterMicros: number;
}
