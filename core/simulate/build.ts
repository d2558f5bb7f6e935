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
  /** What moulding leaves: waves of the radius around the gate, each with its size as a tilt. None unless given. */
  readonly waves?: readonly { readonly fold: number; readonly size: number; readonly phaseDegrees: number }[];
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

/**
 * How the response of a sensor grows with the tilt, with slope 1 at no tilt: a potentiometer in a line; a Hall sensor as the
 * sine of a magnet that turns by so many degrees at full tilt; a magnetic tunnel resistor as tanh(s·tilt)/s, s its saturation.
 */
export type SensorLaw =
  | { readonly kind: 'potentiometer' }
  | { readonly kind: 'hall'; readonly fullDegrees: number }
  | { readonly kind: 'tmr'; readonly saturation: number };

/** One axis of a stick: from the tilt of the part to the count of the converter. */
export interface SensorBuild {
  /** Count at no tilt. */
  readonly middle: number;
  /** Counts per unit of tilt. */
  readonly gain: number;
  /** +1 where the count grows to the right or up, −1 where it shrinks. */
  readonly up: 1 | -1;
  /** A potentiometer's unless given. */
  readonly law?: SensorLaw;
  /** What the law leaves out: response · (1 + bend · response²). */
  readonly bend: number;
  /** What is left of the response on either side of no tilt; 1 is all of it. */
  readonly reach: { readonly minus: number; readonly plus: number };
  /** Standard deviation in counts. */
  readonly noise: number;
  /** The sensor gives no count outside of these. */
  readonly clip: { readonly low: number; readonly high: number };
  readonly worn: readonly WornZone[];
  /** Bits that the converter really resolves; counts come in steps of 2^(12 − bits). 12 unless given. */
  readonly adcBits?: number;
  /** The axis is dead: it stays at this count, whatever the tilt. */
  readonly deadAt?: number | null;
  /** After soldering the middle is so many counts off and comes back with this time constant. */
  readonly drift?: { readonly counts: number; readonly seconds: number };
}

/** What bends a free stick's rest while it lasts. */
export const disturbances = ['click', 'rumble', 'other-stick', 'charger', 'shell'] as const;
export type Disturbance = (typeof disturbances)[number];

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
  /** The two sensors' wires are exchanged: what is x is reported as y. */
  readonly swapped?: boolean;
  /** The axis is wired the wrong way round: its count runs backwards. */
  readonly inverted?: { readonly x: boolean; readonly y: boolean };
  /** By how much of a tilt each disturbance moves the reading while it lasts; not at all unless given. */
  readonly bends?: Readonly<Partial<Record<Disturbance, Pair>>>;
}

/** One button that is not what it should be; its number is its usage. */
export interface SwitchBuild {
  readonly button: number;
  /** Seconds for which the contact opens and closes again after it changed. */
  readonly bounceSeconds: number;
  /** The contact never closes, or never opens. */
  readonly fails?: 'open' | 'closed';
}

/** Per axis the counts that a pad's own firmware turns into the least, middle and largest value it reports. */
export interface FirmwareMapping {
  readonly x: { readonly min: number; readonly centre: number; readonly max: number };
  readonly y: { readonly min: number; readonly centre: number; readonly max: number };
}

/** Where a pad keeps its mappings; it uses the user's where there is one. */
export interface StoredLayers {
  readonly user: Readonly<Partial<Record<StickId, FirmwareMapping>>> | null;
  readonly factory: Readonly<Record<StickId, FirmwareMapping>>;
}

export interface PadBuild {
  readonly product: string;
  /** `sensor`: 12-bit counts of the converter as they are; `plain`: 8-bit values after the firmware's own mapping. */
  readonly family: 'sensor' | 'plain';
  readonly sticks: Readonly<Record<StickId, StickBuild>>;
  /** What the firmware works with; a pad of the `sensor` family reports before it. */
  readonly firmware: Readonly<Record<StickId, FirmwareMapping>>;
  /** What its memory holds; a factory layer equal to `firmware` unless given. */
  readonly layers?: StoredLayers;
  /** Faulty buttons; all others are sound. */
  readonly switches?: readonly SwitchBuild[];
  readonly intervalMicros: number;
  /** Each report leaves up to this much early or late; below half of the interval. */
  readonly jitterMicros: number;
  /** Only reports that differ from the one before are sent. */
  readonly onChange?: boolean;
}
