import { describe, expect, it } from 'vitest';
import { createChance } from '../../../core/simulate/chance.ts';
import { drawUnit, soundTolerances } from '../../../core/simulate/draw-unit.ts';
import { drawSpot, usualSpot } from '../../../core/simulate/fault-spot.ts';
import { FULL_TILT_DEGREES } from '../../../core/simulate/fault-changes.ts';
import { applyFault, faultNames, faultUnits, type FaultName } from '../../../core/simulate/faults.ts';
import { SimulatedPad } from '../../../core/simulate/simulated-pad.ts';
import { meanOf, readingsOf } from '../../support/simulated-readings.ts';

const sound = drawUnit(3);
const left = sound.sticks.left;

function withFault(fault: FaultName, size: number, spot = usualSpot) {
  return applyFault(sound, fault, size, spot).sticks.left;
}

/** Largest and least x of two turns along the gate. */
function extentsOf(build: typeof sound): { least: number; largest: number } {
  const pad = new SimulatedPad(build, 5, 'extents');
  pad.hand.turn('left', 2, 'clockwise');
  const xs = readingsOf(pad, 4).map((reading) => reading.leftX);
  return { least: Math.min(...xs), largest: Math.max(...xs) };
}

describe('the faults', () => {
  it('each change the build and leave the other stick alone, at a size of their own unit', () => {
    for (const fault of faultNames) {
      const faulty = applyFault(sound, fault, 4);
      expect(faulty, fault).not.toEqual(sound);
      expect(faulty.sticks.right, fault).toEqual(sound.sticks.right);
      expect(faultUnits[fault].length).toBeGreaterThan(0);
    }
  });

  it('have the size that they are given', () => {
    const offCentre = withFault('off-centre-part', 2);
    expect((offCentre.x.middle - left.x.middle) / (2 * left.x.gain)).toBeCloseTo(0.02, 9);
    const upwards = withFault('off-centre-part', 2, { ...usualSpot, angle: 90 });
    expect((upwards.y.middle - left.y.middle) / (2 * left.y.gain)).toBeCloseTo(-0.02, 9);
    const seat = withFault('seat-not-flat', 1.5);
    expect(left.gate.centre.x - seat.gate.centre.x).toBeCloseTo(1.5 / FULL_TILT_DEGREES, 9);
    const skewed = withFault('skewed-part', 5);
    const lean = skewed.crossTalk.xFromY - left.crossTalk.xFromY;
    expect((Math.asin((2 * lean) / (1 + lean * lean)) * 180) / Math.PI).toBeCloseTo(5, 9);
    expect(withFault('noisy-joint', 3).x.noise).toBeCloseTo(3 * left.x.noise, 9);
    const worn = withFault('worn-track', 0.5).x.worn[0]!;
    expect((worn.to - worn.from) / 2).toBeCloseTo(0.005, 9);
  });

  it('shorten, clip and kill one axis as a host sees it', () => {
    const { least, largest } = extentsOf(sound);
    const middle = left.x.middle;
    const short = extentsOf(applyFault(sound, 'short-range', 10));
    expect((short.largest - middle) / (largest - middle)).toBeCloseTo(0.9, 2);
    expect(short.least).toBe(least);
    const clipped = extentsOf(applyFault(sound, 'clipped-sensor', 5, { ...usualSpot, side: -1 }));
    expect((middle - clipped.least) / (middle - least)).toBeCloseTo(0.95, 2);
    expect(clipped.largest).toBe(largest);
    const dead = extentsOf(applyFault(sound, 'dead-axis', 1, { ...usualSpot, at: 0 }));
    expect(dead.largest - dead.least).toBeLessThan(20);
  });

  it('exchange the axes, or turn one round', () => {
    const pushed = (fault: FaultName) => {
      const pad = new SimulatedPad(applyFault(sound, fault, 1), 6, 'pushed');
      pad.hand.pushAndHold('left', 0);
      readingsOf(pad, 1);
      const held = readingsOf(pad, 0.2);
      return { x: meanOf(held, (one) => one.leftX) - 2048, y: 2048 - meanOf(held, (one) => one.leftY) };
    };
    expect(pushed('inverted-axis').x).toBeLessThan(-1000);
    expect(Math.abs(pushed('swapped-axes').y)).toBeGreaterThan(1000);
    expect(Math.abs(pushed('swapped-axes').x)).toBeLessThan(200);
  });

  it('let the stick swing past its rest by their size, and a healthy one does not', () => {
    const past = (build: typeof sound): number => {
      const pad = new SimulatedPad(build, 8, 'flick');
      pad.hand.flick('left', 0);
      while (pad.hand.holds('left')) readingsOf(pad, 0.002);
      const back = readingsOf(pad, 0.3).map((reading) => reading.leftX);
      return (left.x.middle - Math.min(...back)) / left.x.gain;
    };
    expect(past(sound)).toBeLessThan(0.02);
    expect(past(applyFault(sound, 'overshoot', 20))).toBeGreaterThan(0.15);
    expect(past(applyFault(sound, 'overshoot', 20))).toBeLessThan(0.22);
  });

  it('change what is stored and nothing else where the storage is at fault', () => {
    const stale = applyFault(sound, 'stale-mapping', 5, { ...usualSpot, at: 0 });
    expect(stale.sticks).toEqual(sound.sticks);
    expect(stale.firmware.left).toEqual(stale.layers?.factory.left);
    const { x } = sound.firmware.left;
    expect((stale.firmware.left.x.centre - x.centre) / ((x.max - x.min) / 2)).toBeCloseTo(0.05, 2);
    const disagree = applyFault(sound, 'layers-disagree', 5);
    expect(disagree.firmware).toEqual(sound.firmware);
    expect(disagree.layers?.user?.left).toEqual(sound.firmware.left);
    expect(disagree.layers?.factory.left).not.toEqual(sound.firmware.left);
    expect(new SimulatedPad(disagree, 1, 'layers').layers.layers).toEqual(disagree.layers);
  });

  it('bend the rest while the click is held, and let it drift after soldering', () => {
    const restOf = (build: typeof sound, act: (pad: SimulatedPad) => void, wait: number): number => {
      const pad = new SimulatedPad(build, 9, 'rest');
      pad.hand.pushAndLetGo('left', 0);
      readingsOf(pad, 1.5);
      act(pad);
      readingsOf(pad, wait);
      return meanOf(readingsOf(pad, 0.3), (reading) => reading.leftX);
    };
    const bent = applyFault(sound, 'disturbed-rest', 4);
    const nothing = (): void => undefined;
    const click = (pad: SimulatedPad): void => {
      pad.hand.press(11, 2000);
    };
    expect((restOf(bent, click, 0.5) - restOf(bent, nothing, 0.5)) / left.x.gain).toBeCloseTo(0.04, 2);
    const drifting = applyFault(sound, 'warming-up', 4);
    const fallen = restOf(drifting, nothing, 0.1) - restOf(drifting, nothing, 240);
    expect(fallen / left.x.gain).toBeGreaterThan(0.03);
  });
});

describe('a drawn unit', () => {
  it('is the same for the same seed, another for another, and within its stated tolerances', () => {
    expect(drawUnit(12)).toEqual(drawUnit(12));
    expect(drawUnit(12)).not.toEqual(drawUnit(13));
    for (let seed = 0; seed < 200; seed += 1) {
      const { x, gate, turnDegrees } = drawUnit(seed).sticks.left;
      expect(Math.abs(x.middle - 2047.5)).toBeLessThanOrEqual(2 * soundTolerances.middle);
      expect(Math.abs(gate.centre.x) * FULL_TILT_DEGREES).toBeLessThanOrEqual(2 * soundTolerances.seatDegrees);
      expect(Math.abs(turnDegrees)).toBeLessThanOrEqual(2 * soundTolerances.turnDegrees);
    }
  });

  it('has spots all over the pad', () => {
    const chance = createChance(1, 1);
    const spots = Array.from({ length: 200 }, () => drawSpot(chance));
    expect(new Set(spots.map(({ axis, side }) => `${axis}${side}`)).size).toBe(4);
    expect(Math.max(...spots.map(({ angle }) => angle))).toBeGreaterThan(340);
    expect(Math.min(...spots.map(({ at }) => at))).toBeLessThan(-0.7);
  });
});
