/** A sound stick module within what data sheets of Hall and potentiometer parts allow. */
import type { Chance } from './chance.ts';
import { drawGate, FULL_TILT, type GateShape } from './gate.ts';
import type { AxisLaw, Part } from './part.ts';
import { ORIGIN } from './plane.ts';

/** σ of the seat per axis, degrees; a seat soldered flush is not off by more than about three of them. */
const SEAT = 0.12;
const SEAT_MOST = 0.33;
/** Degrees. */
const SKEW = 1;
const TURNED = 1;
const ANGLES_MOST = 2.5;
/** Gain of a side against the other, where the maker sorts: a data sheet's limit of ±1.5 % is where a short side begins. */
const GAIN = 0.003;
const GAIN_MOST = 0.006;
/** Middle of the spring, degrees, and of the sensors' voltage, share of the half travel. */
const SPRING = 0.08;
const SPRING_MOST = 0.2;
const OFFSET = 0.01;
const OFFSET_MOST = 0.025;

export function drawPart(shape: GateShape, chance: Chance): Part {
  const span = chance.between(0.54, 0.7);
  return {
    gate: drawGate(shape, chance),
    seat: { x: chance.within(SEAT, SEAT_MOST), y: chance.within(SEAT, SEAT_MOST) },
    springOff: { x: chance.within(SPRING, SPRING_MOST), y: chance.within(SPRING, SPRING_MOST) },
    turned: chance.within(TURNED, ANGLES_MOST),
    skew: chance.within(SKEW, ANGLES_MOST),
    geometry: chance.happens(0.3) ? 'gimbal' : 'flat',
    x: drawLaw(span, chance),
    y: drawLaw(span * (1 + chance.within(0.01, 0.02)), chance),
    shared: ORIGIN,
    clip: null,
    spring: {
      hertz: chance.between(12, 22),
      damping: chance.between(0.8, 1.1),
      scatter: FULL_TILT * chance.between(0.001, 0.003),
      carried: chance.between(0.3, 0.8),
      lag: FULL_TILT * chance.between(0, 0.003),
      slow: null,
      second: null,
      outlier: null,
      drift: ORIGIN,
    },
    noise: { white: chance.happens(0.3) ? chance.between(0.15, 0.5) : chance.between(0.5, 2), slow: 0.35 },
    lost: [],
  };
}

/** Linear within 1 % as a cubic can be told from a line. */
function drawLaw(span: number, chance: Chance): AxisLaw {
  return {
    span,
    offset: chance.within(OFFSET, OFFSET_MOST),
    plusGain: 1 + chance.within(GAIN, GAIN_MOST),
    minusGain: 1 + chance.within(GAIN, GAIN_MOST),
    cubic: chance.within(0.01, 0.02),
  };
}
