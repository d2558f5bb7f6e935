/** From the tilt of a part to the whole count of its converter. */
import type { Pair } from '../pad/stick.ts';
import type { SensorBuild, StickBuild } from './build.ts';
import type { Chance } from './chance.ts';
import { respond } from './sensor-law.ts';

const ADC_BITS = 12;
export const ADC_MAXIMUM = 2 ** ADC_BITS - 1;

/** The tilt as the two sensors of a part see it: turned with the part, each axis with some of the other. */
export function tiltOfPart(stick: StickBuild, tilt: Pair): Pair {
  const turn = (stick.turnDegrees * Math.PI) / 180;
  const x = tilt.x * Math.cos(turn) + tilt.y * Math.sin(turn);
  const y = tilt.y * Math.cos(turn) - tilt.x * Math.sin(turn);
  return { x: x + stick.crossTalk.xFromY * y, y: y + stick.crossTalk.yFromX * x };
}

/**
 * One conversion: law, gain, middle, drift since soldering, noise and wear, then the sensor's own limits and the converter's
 * whole counts. `seconds` since the part was soldered.
 */
export function convert(sensor: SensorBuild, tilt: number, chance: Chance, seconds = 0): number {
  const noise = sensor.noise * chance.normal();
  let count = idealCount(sensor, tilt) + noise;
  if (sensor.drift !== undefined) count += sensor.drift.counts * Math.exp(-seconds / sensor.drift.seconds);
  for (const zone of sensor.worn) {
    if (tilt < zone.from || tilt > zone.to) continue;
    count += zone.noise * chance.normal();
    if (chance.next() < zone.liftShare) count += zone.lift * chance.normal();
  }
  if (sensor.deadAt !== undefined && sensor.deadAt !== null) count = sensor.deadAt + noise;
  const limited = Math.min(sensor.clip.high, Math.max(sensor.clip.low, count));
  const step = 2 ** (ADC_BITS - (sensor.adcBits ?? ADC_BITS));
  return Math.min(ADC_MAXIMUM, Math.max(0, step * Math.round(limited / step)));
}

/** Count of a tilt without noise, wear or limits, not rounded. */
export function idealCount(sensor: SensorBuild, tilt: number): number {
  const response = respond(tilt, sensor.law, sensor.bend);
  const left = response < 0 ? sensor.reach.minus : sensor.reach.plus;
  return sensor.middle + sensor.up * sensor.gain * left * response;
}
