/** How a sensor's response grows with the tilt. */
import type { SensorLaw } from './build.ts';

const straight: SensorLaw = { kind: 'potentiometer' };

/**
 * Response to a tilt, with slope 1 at no tilt. Hall: sin(a·tilt)/a, a the magnet's turn at full tilt in radians (on a circular
 * tilt the fields are sinusoidal: TI SLYU064A). TMR: tanh(s·tilt)/s, which flattens toward saturation (a common model of
 * the bridge, from memory).
 */
export function respond(tilt: number, law: SensorLaw = straight, bend = 0): number {
  const response = respondTo(law, tilt);
  return response * (1 + bend * response * response);
}

function respondTo(law: SensorLaw, tilt: number): number {
  if (law.kind === 'potentiometer') return tilt;
  if (law.kind === 'tmr') return Math.tanh(law.saturation * tilt) / law.saturation;
  const full = (law.fullDegrees * Math.PI) / 180;
  return Math.sin(full * tilt) / full;
}
