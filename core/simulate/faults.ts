/** What can be wrong with a stick, each fault with a size in stated units: one change of a build. */
import { STICKS, type Pair, type StickId } from '../pad/stick.ts';
import type { PadBuild, StickBuild } from './build.ts';
import * as change from './fault-changes.ts';
import { usualSpot, type FaultSpot } from './fault-spot.ts';
import { clipAxis, driftAxis, failAxis, noisyAxis, shortenAxis, wearTrack } from './sensor-faults.ts';
import { moveStored } from './stored-faults.ts';

/** Each fault by name, with the unit of its size. Those in `whole` have no graded size: 1 is all of it. */
export const faultUnits = {
  'stale-mapping': '% of the half travel',
  'off-centre-part': '% of the travel',
  'seat-not-flat': '°',
  'turned-part': '°',
  'skewed-part': '°',
  'short-range': '% of one side',
  'clipped-sensor': '% of one side',
  'worn-track': '% of the travel',
  'noisy-joint': 'times the noise',
  'dead-axis': 'whole',
  'swapped-axes': 'whole',
  'inverted-axis': 'whole',
  'loose-return': '% of the half travel',
  overshoot: '% of the half travel',
  'layers-disagree': '% of the half travel',
  'inputs-fail': 'ms',
  'disturbed-rest': '% of the half travel',
  'warming-up': '% of the half travel',
} as const;
export type FaultName = keyof typeof faultUnits;

export const faultNames = Object.keys(faultUnits) as readonly FaultName[];

/**
 * The build with one fault of this size more, which is the whole of it: a healthy build stays as it is at size 0, or 1 time
 * the noise. A fault does not change what the pad stores, unless it is one of the storage.
 */
export function applyFault(build: PadBuild, fault: FaultName, size: number, spot: FaultSpot = usualSpot): PadBuild {
  if (fault === 'stale-mapping' || fault === 'layers-disagree') return moveStored(build, fault, size / 100, spot);
  if (fault === 'inputs-fail') {
    const bounce = { button: spot.button, bounceSeconds: size / 1000 };
    return { ...build, switches: [...(build.switches ?? []), bounce] };
  }
  const sticks = Object.fromEntries(
    STICKS.map((stick) => {
      const sound = build.sticks[stick];
      return [stick, stick === spot.stick ? changeStick(sound, fault, size, spot) : sound];
    }),
  ) as Record<StickId, StickBuild>;
  return { ...build, sticks };
}

type StickFault = Exclude<FaultName, 'stale-mapping' | 'layers-disagree' | 'inputs-fail'>;

function changeStick(stick: StickBuild, fault: StickFault, size: number, spot: FaultSpot): StickBuild {
  const share = size / 100;
  const { axis, side, at } = spot;
  const shift = (length: number): Pair => polar(length, spot.angle);
  switch (fault) {
    case 'off-centre-part':
      return change.moveMiddle(stick, shift(2 * share));
    case 'seat-not-flat':
      return change.tiltSeat(stick, shift(size / change.FULL_TILT_DEGREES));
    case 'turned-part':
      return { ...stick, turnDegrees: stick.turnDegrees + side * size };
    case 'skewed-part':
      return change.skewAxes(stick, side * size);
    case 'short-range':
      return { ...stick, [axis]: shortenAxis(stick[axis], side, share) };
    case 'clipped-sensor':
      return { ...stick, [axis]: clipAxis(stick[axis], change.extreme(stick, axis, side), share) };
    case 'worn-track':
      return { ...stick, [axis]: wearTrack(stick[axis], at, share) };
    case 'noisy-joint':
      return { ...stick, [axis]: noisyAxis(stick[axis], size) };
    case 'dead-axis':
      return { ...stick, [axis]: failAxis(stick[axis], at) };
    case 'swapped-axes':
      return { ...stick, swapped: true };
    case 'inverted-axis':
      return { ...stick, inverted: { x: axis === 'x', y: axis === 'y' } };
    case 'loose-return':
      return change.loosen(stick, share);
    case 'overshoot':
      return change.undamp(stick, share);
    case 'disturbed-rest':
      return { ...stick, bends: { ...stick.bends, click: shift(share) } };
    case 'warming-up':
      return { ...stick, [axis]: driftAxis(stick[axis], side * share) };
  }
}

function polar(radius: number, degrees: number): Pair {
  const angle = (degrees * Math.PI) / 180;
  return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
}
