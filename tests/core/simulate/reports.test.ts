import { describe, expect, it } from 'vitest';
import { plainReport, sensorReport } from '../../../core/simulate/reports.ts';
import { bitsAt } from '../../support/simulated-readings.ts';

const content = {
  leftX: 0xabc,
  leftY: 0x123,
  rightX: 0xfed,
  rightY: 0x456,
  leftTrigger: 0x77,
  rightTrigger: 0xfe,
  hat: 5,
  buttons: 0b1010_0101_1100_0011,
};

describe('the report of the sensor family', () => {
  it('holds every value at its place', () => {
    const payload = new Uint8Array(sensorReport.byteLength);
    sensorReport.pack(content, payload);
    const placed = [0, 12, 24, 36].map((offset) => bitsAt(payload, offset, 12));
    expect(placed).toEqual([0xabc, 0x123, 0xfed, 0x456]);
    expect(bitsAt(payload, 48, 8)).toBe(0x77);
    expect(bitsAt(payload, 56, 8)).toBe(0xfe);
    expect(bitsAt(payload, 64, 4)).toBe(5);
    expect(bitsAt(payload, 68, 16)).toBe(content.buttons);
    expect(bitsAt(payload, 84, 4)).toBe(0);
  });
});

describe('the report of the plain family', () => {
  it('holds every value at its place', () => {
    const payload = new Uint8Array(plainReport.byteLength);
    plainReport.pack({ ...content, leftX: 1, leftY: 2, rightX: 3, rightY: 4 }, payload);
    expect([...payload.subarray(0, 6)]).toEqual([1, 2, 3, 4, 0x77, 0xfe]);
    expect(bitsAt(payload, 48, 4)).toBe(5);
    expect(bitsAt(payload, 52, 14)).toBe(content.buttons & 0x3fff);
    expect(bitsAt(payload, 66, 6)).toBe(0);
  });
});
