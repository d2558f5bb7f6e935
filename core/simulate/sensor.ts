/** From the tilt of a part to the whole count of its converter. */
import type { Pair } from '../pad/stick.ts';
import type { SensorBuild, StickBuild } from './build.ts';
import type { Chance } from './chance.ts';

const ADC_BITS = 12;
export const ADC_MAXIMUM = 2 ** ADC_BITS - 1;

/** The tilt as the two sensors of a part see it: turned with the part, each axis with some of the other. */
export function tiltOfPart(stick: StickBuild, tilt: Pair): Pair {
  const turn = (stick.turnDegrees * Math.PI) / 180;
  const x = tilt.x * Math.cos(turn) + tilt.y * Math.sin(turn);
  const y = tilt.y * Math.cos(turn) - tilt.x * Math.sin(turn);
  return { x: x + stick.crossTalk.xFromY * y, y: y + stick.crossTalk.yFromX * x };
}

/** One conversion: law, gain, middle, noise and wear, then the sensor's own limits and the converter's whole counts. */
export function convert(sensor: SensorBuild, tilt: number, chance: Chance): number {
  const response = tilt * (1 + sensor.bend * tilt * tilt);
  const left = response < 0 ? sensor.reach.minus : sensor.reach.plus;
  let count = sensor.middle + sensor.up * sensor.gain * left * response + sensor.noise * chance.normal();
  for (const zone of sensor.worn) {
    if (tilt < zone.from || tilt > zone.to) continue;
    count += zone.noise * chance.normal();
    if (chance.next() < zone.liftShare) count += zone.lift * chance.normal();
  }
  const limited = Math.min(sensor.clip.high, Math.max(sensor.clip.low, count));
  return Math.min(ADC_MAXIMUM, Math.max(0, Math.round(limited)));
}
