/** Faults of one sensor, its track, its joint and its wires. */
import type { SensorBuild } from './build.ts';

/**
 * How bad a worn stretch is: the wiper lifts in a third of the readings and is off by 2 % of the converter's range, the sliding
 * noise that a maker's limit for carbon tracks still allows (100 mV of 5 V), and it scrapes by some counts all the time.
 */
const LIFT_SHARE = 0.35;
const LIFT_COUNTS = 82;
const SCRAPE_COUNTS = 12;
/** Seconds in which the drift after soldering falls to 37 %. */
const COOLING_SECONDS = 60;

/** A share of the response is lost on one side of the tilt. */
export function shortenAxis(sensor: SensorBuild, side: 1 | -1, share: number): SensorBuild {
  const { minus, plus } = sensor.reach;
  const reach = side > 0 ? { minus, plus: plus * (1 - share) } : { minus: minus * (1 - share), plus };
  return { ...sensor, reach };
}

/** The sensor gives nothing beyond a share before the count that the gate would allow. */
export function clipAxis(sensor: SensorBuild, extreme: number, share: number): SensorBuild {
  const limit = sensor.middle + (extreme - sensor.middle) * (1 - share);
  const clip =
    extreme > sensor.middle ? { ...sensor.clip, high: Math.round(limit) } : { ...sensor.clip, low: Math.round(limit) };
  return { ...sensor, clip };
}

/** A stretch of the track is worn: this share of the travel, about a tilt. */
export function wearTrack(sensor: SensorBuild, at: number, share: number): SensorBuild {
  const worn = { from: at - share, to: at + share, noise: SCRAPE_COUNTS, liftShare: LIFT_SHARE, lift: LIFT_COUNTS };
  return share <= 0 ? sensor : { ...sensor, worn: [...sensor.worn, worn] };
}

/** So many times the noise. */
export function noisyAxis(sensor: SensorBuild, times: number): SensorBuild {
  return { ...sensor, noise: sensor.noise * times };
}

/** The axis stays where it is whatever the stick does: at its middle, or where a broken wire leaves the converter. */
export function failAxis(sensor: SensorBuild, at: number): SensorBuild {
  return { ...sensor, deadAt: at < -0.4 ? 0 : at > 0.4 ? 4095 : sensor.middle };
}

/** The middle comes back from so far off, as a share of the half travel. */
export function driftAxis(sensor: SensorBuild, share: number): SensorBuild {
  return { ...sensor, drift: { counts: share * sensor.gain, seconds: COOLING_SECONDS } };
}
