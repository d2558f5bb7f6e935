import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deflect, limit } from '../../../core/mapping/deflect.ts';
import { undeflectAxis } from '../../../core/mapping/deflect-axis.ts';
import type { AxisMapping } from '../../../core/mapping/mapping.ts';
import { rangeMapping } from '../../../core/mapping/range-mapping.ts';
import type { StickFields } from '../../../core/pad/stick.ts';
import { reportedFields, sensorFields } from '../../support/fields.ts';

const axis: AxisMapping = { min: 400, centre: 2000, max: 3200 };
const mapping = { x: axis, y: axis };

const anyAxis = fc
  .tuple(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 1, max: 1500 }), fc.integer({ min: 1, max: 1500 }))
  .map(([min, below, above]): AxisMapping => ({ min, centre: min + below, max: min + below + above }));
const anyUp = fc.constantFrom<1 | -1>(1, -1);
const anyFields = fc
  .tuple(anyUp, anyUp)
  .map(([x, y]): StickFields => ({ x: { ...sensorFields.x, up: x }, y: { ...sensorFields.y, up: y } }));
const anyCount = fc.integer({ min: 0, max: 4095 });

describe('deflect', () => {
  it('divides by the span on the side of the centre where the count lies', () => {
    expect(deflect(mapping, sensorFields, { x: 2600, y: 1200 })).toEqual({ x: 0.5, y: -0.5 });
    expect(deflect(mapping, sensorFields, { x: 3200, y: 400 })).toEqual({ x: 1, y: -1 });
  });

  it('is free: beyond an edge it gives more than one', () => {
    expect(deflect(mapping, sensorFields, { x: 3800, y: 0 })).toEqual({ x: 1.5, y: -1.25 });
  });

  it('turns y where its count grows downwards, so that full up is at the least count', () => {
    const turned: StickFields = { x: sensorFields.x, y: { ...sensorFields.y, up: -1 } };
    expect(deflect(mapping, turned, { x: 2000, y: 400 })).toEqual({ x: 0, y: 1 });
    expect(deflect(mapping, turned, { x: 2000, y: 3200 })).toEqual({ x: 0, y: -1 });
    expect(deflect(mapping, turned, { x: 2000, y: 1200 })).toEqual({ x: 0, y: 0.5 });
  });

  it('turns x where its count grows to the left', () => {
    const turned: StickFields = { x: { ...sensorFields.x, up: -1 }, y: sensorFields.y };
    expect(deflect(mapping, turned, { x: 400, y: 2000 })).toEqual({ x: 1, y: 0 });
    expect(deflect(mapping, turned, { x: 2600, y: 2000 })).toEqual({ x: -0.5, y: 0 });
  });

  it('gives a plain zero at the centre whatever the sign of the axis', () => {
    const d = deflect(mapping, reportedFields, { x: 2000, y: 2000 });
    expect(Object.is(d.x, 0)).toBe(true);
    expect(Object.is(d.y, 0)).toBe(true);
  });

  it('grows with the count where the axis is not turned and shrinks with it where it is', () => {
    fc.assert(
      fc.property(anyAxis, anyUp, anyCount, anyCount, (one, up, a, b) => {
        fc.pre(a < b);
        const fields: StickFields = { x: { ...sensorFields.x, up }, y: sensorFields.y };
        const low = deflect({ x: one, y: one }, fields, { x: a, y: 0 }).x;
        const high = deflect({ x: one, y: one }, fields, { x: b, y: 0 }).x;
        expect(Math.sign(high - low)).toBe(up);
      }),
      { seed: 11 },
    );
  });
});

describe('undeflectAxis', () => {
  it('leads back to the counts that deflect came from, for every sign of the axes', () => {
    fc.assert(
      fc.property(anyAxis, anyAxis, anyFields, anyCount, anyCount, (x, y, fields, u, v) => {
        const d = deflect({ x, y }, fields, { x: u, y: v });
        expect(undeflectAxis(x, fields.x.up, d.x)).toBeCloseTo(u, 9);
        expect(undeflectAxis(y, fields.y.up, d.y)).toBeCloseTo(v, 9);
      }),
      { seed: 12 },
    );
  });

  it('puts the full deflections on the edges', () => {
    expect([-1, 1].map((d) => undeflectAxis(mapping.x, 1, d))).toEqual([400, 3200]);
    expect([-1, 1].map((d) => undeflectAxis(mapping.y, -1, d))).toEqual([3200, 400]);
  });
});

describe('limit', () => {
  it('holds each axis within −1 … 1 and leaves the rest as it is', () => {
    expect(limit({ x: 1.2, y: -3 })).toEqual({ x: 1, y: -1 });
    expect(limit({ x: 0.3, y: -0.9 })).toEqual({ x: 0.3, y: -0.9 });
  });
});

describe('rangeMapping', () => {
  it('takes the logical range with its middle, which may lie between two counts', () => {
    expect(rangeMapping(reportedFields).x).toEqual({ min: 0, centre: 127.5, max: 255 });
    expect(rangeMapping(sensorFields).y).toEqual({ min: 0, centre: 2047.5, max: 4095 });
  });

  // W3C Gamepad, "map and normalize axes": 2(value − min)/(max − min) − 1.
  it.each([
    [0, 255, 64, -0.4980392156862745],
    [0, 255, 127, -0.0039215686274509665],
    [0, 255, 128, 0.0039215686274509665],
    [0, 65535, 32768, 1.5259021896696368e-5],
    [-127, 127, 0, 0],
    [-128, 127, 0, 0.0039215686274509665],
    [0, 1023, 511, -0.0009775171065493637],
    [-32768, 32767, -32768, -1],
    [-32768, 32767, 32767, 1],
  ])('normalises as the published rule does: %d … %d, count %d', (minimum, maximum, value, expected) => {
    const field = { minimum, maximum, up: 1 } as const;
    const fields: StickFields = { x: field, y: field };
    expect(deflect(rangeMapping(fields), fields, { x: value, y: value }).x).toBeCloseTo(expected, 14);
  });
});
