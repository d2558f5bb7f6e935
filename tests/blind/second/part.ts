/** A stick module as it is mounted: its gate, how it sits, its spring, its two sensors and what is wrong with its signals. */
import type { Gate } from './gate.ts';
import type { Lost } from './lost-signal.ts';
import type { Vec } from './plane.ts';

export interface AxisLaw {
  /** Half travel in shares of half the converter's range. */
  readonly span: number;
  /** Reading of an untilted axis off the middle of the supply, share of the half travel. */
  readonly offset: number;
  /** Gain of either side, 1 is the nominal. */
  readonly plusGain: number;
  readonly minusGain: number;
  /** Part of the third power in the law: z ↦ (z + k z³)/(1 + k). */
  readonly cubic: number;
}

export interface Spring {
  /** Of the undamped swing, hertz. */
  readonly hertz: number;
  /** 1 is critical. */
  readonly damping: number;
  /** σ of the resting places per axis, degrees; part of it is carried over from one release to the next. */
  readonly scatter: number;
  readonly carried: number;
  /** It rests so far toward where it came from, degrees. */
  readonly lag: number;
  /** Seconds until only 2 % of the full tilt are left; null for a spring that snaps back. `creep`: only the last twelfth is slow. */
  readonly slow: { readonly seconds: number; readonly creep: boolean } | null;
  /** The second of two resting places, from the first, degrees, and how often it is taken. */
  readonly second: { readonly from: Vec; readonly share: number } | null;
  /** One release, counted from 0, that comes to rest elsewhere, degrees. */
  readonly outlier: { readonly release: number; readonly by: Vec } | null;
  /** The resting place at the end of 150 s, from that at the beginning, degrees. */
  readonly drift: Vec;
}

export interface NoiseOf {
  /** σ of the white part, counts of 12 bits. */
  readonly white: number;
  /** σ of the part that falls with frequency, shares of the white. */
  readonly slow: number;
}

export interface Part {
  readonly gate: Gate;
  /** How far the seat is tilted out of the gate's axis, degrees: spring and sensors are tilted with it. */
  readonly seat: Vec;
  /** How far the spring rests from where the sensors' middle is, degrees. */
  readonly springOff: Vec;
  /** Counter-clockwise, degrees. */
  readonly turned: number;
  /** The sensors' axes stand so much further apart than a right angle, degrees. */
  readonly skew: number;
  /** `gimbal`: each sensor sees the angle of its own frame, atan(tan(tilt) · cos); `flat`: the part of the tilt along it. */
  readonly geometry: 'flat' | 'gimbal';
  readonly x: AxisLaw;
  readonly y: AxisLaw;
  /** Share of the other axis' deflection that appears on this one. */
  readonly shared: Vec;
  /** The converter sees nothing beyond, shares of the half travel; null where all of it is seen. */
  readonly clip: { readonly axis: 'x' | 'y'; readonly side: 1 | -1; readonly at: number } | null;
  readonly spring: Spring;
  readonly noise: NoiseOf;
  readonly lost: readonly Lost[];
}
