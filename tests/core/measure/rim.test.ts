import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { rangeMapping } from '../../../core/mapping/range-mapping.ts';
import { measureRim } from '../../../core/measure/rim.ts';
import type { StickFields } from '../../../core/pad/stick.ts';
import { reportedFields, sensorFields } from '../../support/fields.ts';
import { makeEvidence, sixTurns, type TurnWish } from '../../support/make-evidence.ts';

const axis = { min: 1048, centre: 2048, max: 3048 };
const mapping: StickMapping = { x: axis, y: axis };
const about = { x: 2048, y: 2048 };

function measure(turns: readonly TurnWish[] | null, under = mapping, fields: StickFields = sensorFields) {
  return measureRim(makeEvidence({ fields, turns, about }), under);
}

describe('measureRim', () => {
  it('is null without a rim capture, and all null but the counts without a turn', () => {
    expect(measure(null)).toBeNull();
    const rim = measure([])!;
    expect(rim.turns).toEqual({ clockwise: 0, counterClockwise: 0 });
    expect(rim.directions.every((one) => one.state === 'none' && one.reach === null)).toBe(true);
    expect(rim).toMatchObject({
      leastReach: null,
      overreach: null,
      meanRadialError: null,
      rmsRadialError: null,
      fullReachShare: null,
      atLimitShare: null,
      pooledSpread: null,
      pooledDegrees: 0,
      directionHysteresis: null,
      turnErrors: null,
      headroom: null,
      skew: null,
    });
  });

  it('of a round gate that is exactly full finds no error', () => {
    const rim = measure(sixTurns(() => 1000))!;
    expect(rim.directions.map((one) => one.angle)).toEqual(Array.from({ length: 72 }, (_, i) => 5 * i));
    expect(rim.meanRadialError).toBeCloseTo(0, 12);
    expect(rim.fullReachShare).toBe(1);
    expect(rim.pooledSpread).toBeCloseTo(0, 12);
    expect(rim.pooledDegrees).toBe(72 * 5);
    expect(rim.headroom).toEqual({ xMin: 1048, xMax: 1047, yMin: 1048, yMax: 1047 });
    for (const one of rim.directions) {
      expect(one.reach).toBeCloseTo(1, 12);
      const turned = Math.abs((one.outputAngle ?? Number.NaN) - one.angle);
      expect(Math.min(turned, 360 - turned)).toBeCloseTo(0, 9);
    }
  });

  it('limits what is seen but not the reach', () => {
    const rim = measure(sixTurns(() => 1200))!;
    const [east, , , , , , , , , diagonal] = rim.directions;
    expect(east).toMatchObject({ state: 'covered', covered: true });
    expect(east?.reach).toBeCloseTo(1.2, 12);
    expect(east?.seen).toBeCloseTo(1, 12);
    expect(diagonal?.seen).toBeCloseTo(1.2, 12);
    expect(rim.overreach?.value).toBeCloseTo(0.2, 12);
    expect(rim.fullReachShare).toBe(1);
  });

  it('tells where the reach is least and where it is most', () => {
    const radius = (degrees: number) => (degrees === 135 ? 900 : degrees === 300 ? 1100 : 1000);
    const rim = measure(sixTurns(radius))!;
    expect(rim.leastReach?.angle).toBe(135);
    expect(rim.leastReach?.value).toBeCloseTo(0.9, 12);
    expect(rim.overreach?.angle).toBe(300);
    expect(rim.overreach?.value).toBeCloseTo(0.1, 12);
    expect(rim.fullReachShare).toBeCloseTo(71 / 72, 12);
    // At 300° both parts stay below 1: |seen − 1| = 0.1 there and at 135°.
    expect(rim.meanRadialError).toBeCloseTo(0.2 / 72, 12);
    expect(rim.rmsRadialError).toBeCloseTo(Math.sqrt(0.02 / 72), 12);
  });

  it('of a perfect eight-sided gate alone finds a mean radial error of 2 to 4 per cent', () => {
    // the flats, one of them on each axis, just reach full output.
    const flats = (degrees: number) => 1000 / Math.cos((((degrees + 22.5) % 45) - 22.5) * (Math.PI / 180));
    const rim = measure(sixTurns(flats))!;
    expect(rim.meanRadialError).toBeGreaterThan(0.02);
    expect(rim.meanRadialError).toBeLessThan(0.04);
    expect(rim.leastReach?.value).toBeCloseTo(1, 12);
    expect(rim.overreach?.value).toBeCloseTo(1 / Math.cos((20 * Math.PI) / 180) - 1, 12);
  });

  it('keeps what was read in thin directions out of every figure, and interpolates nothing', () => {
    const short = (degrees: number) => (degrees >= 90 && degrees < 120 ? 500 : 1000);
    const turns: TurnWish[] = [
      ...sixTurns((degrees) => (degrees >= 90 && degrees < 120 ? null : 1000)),
      { way: 'clockwise', radius: short },
    ];
    const rim = measure(turns)!;
    const thin = rim.directions.filter((one) => one.state === 'thin');
    expect(thin.map((one) => one.angle)).toEqual([90, 95, 100, 105, 110, 115]);
    expect(thin.every((one) => one.reach !== null && Math.abs(one.reach - 0.5) < 1e-9 && !one.covered)).toBe(true);
    expect(thin.every((one) => one.spread === null)).toBe(true);
    expect(rim.leastReach?.value).toBeCloseTo(1, 12);
    expect(rim.fullReachShare).toBe(1);
    const bare = measure(sixTurns((degrees) => (degrees === 40 ? null : 1000)))!.directions[8];
    expect(bare).toEqual({
      angle: 40,
      x: null,
      y: null,
      reach: null,
      seen: null,
      outputAngle: null,
      spread: null,
      state: 'none',
      covered: false,
      atLimit: false,
    });
  });

  it('states no figure while no direction is covered', () => {
    const rim = measure([{ way: 'clockwise', radius: () => 1000 }])!;
    expect(rim.directions.every((one) => one.state === 'thin')).toBe(true);
    expect(rim).toMatchObject({ leastReach: null, meanRadialError: null, fullReachShare: null, pooledSpread: null });
  });

  it('pools the spread over turns with its degrees of freedom, and tells the two ways apart', () => {
    const turns = [
      ...[990, 1000, 1010].map((radius): TurnWish => ({ way: 'clockwise', radius: () => radius })),
      ...[1010, 1020, 1030].map((radius): TurnWish => ({ way: 'counterClockwise', radius: () => radius })),
    ];
    const rim = measure(turns)!;
    // 990, 1000, 1010, 1010, 1020, 1030: mean 1010, Σd² = 1000, five degrees.
    expect(rim.directions[0]?.spread).toBeCloseTo(Math.sqrt(1000 / 5) / 1000, 12);
    expect(rim.pooledSpread).toBeCloseTo(Math.sqrt(1000 / 5) / 1000, 12);
    expect(rim.pooledDegrees).toBe(360);
    expect(rim.directionHysteresis).toBeCloseTo(0.02, 12);
    // The n-th turn one way less the n-th the other way is 20; the three one way lie 20 apart.
    expect(rim.turnErrors?.hysteresis).toBeCloseTo(0.02, 12);
    expect(rim.turnErrors?.repeatability).toBeCloseTo(0.02, 12);
  });

  it('marks directions whose count stands at a limit of its field: the reach there is at least that', () => {
    const fields: StickFields = { x: { ...sensorFields.x, maximum: 3048 }, y: sensorFields.y };
    const rim = measure(
      sixTurns(() => 1000),
      mapping,
      fields,
    )!;
    expect(rim.directions.filter((one) => one.atLimit).map((one) => one.angle)).toEqual([0]);
    expect(rim.atLimitShare).toBeCloseTo(1 / 72, 12);
    expect(rim.headroom?.xMax).toBe(0);
  });

  it('turns y where its count grows downwards', () => {
    const up = { x: { min: 0, centre: 128, max: 255 }, y: { min: 28, centre: 128, max: 255 } };
    const turns = sixTurns(() => 100);
    const rim = measureRim(makeEvidence({ fields: reportedFields, turns, about: { x: 128, y: 128 } }), up)!;
    const north = rim.directions[18]!;
    expect(north).toMatchObject({ angle: 90 });
    expect(north.y).toBeCloseTo(100, 12);
    expect(north.reach).toBeCloseTo(1, 12);
    expect(rim.directions[54]?.reach).toBeCloseTo(100 / 127, 12);
    expect(rim.headroom).toEqual({ xMin: 28, xMax: 27, yMin: 28, yMax: 27 });
  });

  it('keeps its directions whatever the mapping, and scales the reach with the spans', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 700, max: 1100 }), { minLength: 72, maxLength: 72 }),
        fc.integer({ min: 500, max: 1500 }),
        (radii, span) => {
          const turns = sixTurns((degrees) => radii[degrees / 5] ?? 1000);
          const wide = { min: 2048 - span, centre: 2048, max: 2048 + span };
          const one = measure(turns)!;
          const other = measure(turns, { x: wide, y: wide })!;
          for (const [index, direction] of one.directions.entries()) {
            expect(other.directions[index]?.x).toBe(direction.x);
            expect(other.directions[index]?.reach).toBeCloseTo(((direction.reach ?? 0) * 1000) / span, 9);
          }
        },
      ),
      { seed: 101, numRuns: 20 },
    );
  });

  it('turns with the gate', () => {
    const radius = (degrees: number) => 950 + 50 * Math.cos((3 * degrees * Math.PI) / 180);
    const one = measure(sixTurns(radius))!;
    const other = measure(sixTurns((degrees) => radius((degrees + 90) % 360)))!;
    for (const [index, direction] of other.directions.entries())
      expect(direction.reach).toBeCloseTo(one.directions[(index + 18) % 72]?.reach ?? Number.NaN, 9);
    expect(other.meanRadialError).toBeCloseTo(one.meanRadialError!, 9);
  });

  it('passes the shapes of the rim readings on, and takes the skew from the ellipse', () => {
    const shape = {
      circle: { x: 2050, y: 2040, radius: 990 },
      ellipse: { x: 2050, y: 2040, a: 1000, b: 1000 * Math.tan(Math.PI / 5), angle: 45 },
      roundness: { leastSquares: 4, minimumZone: 3, minimumCircumscribed: 3.5, maximumInscribed: 3.6 },
    };
    const rim = measureRim(makeEvidence({ turns: sixTurns(() => 1000), shape }), rangeMapping(sensorFields))!;
    expect(rim).toMatchObject(shape);
    // Half axes under 45° with b/a = tan(45° − σ/2), σ = 18°.
    expect(rim.skew).toBeCloseTo(18, 9);
  });
});
