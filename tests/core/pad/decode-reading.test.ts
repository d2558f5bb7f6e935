import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../core/result.ts';
import { createReadingDecoder } from '../../../core/pad/decode-reading.ts';
import { findLayout } from '../../../core/pad/find-layout.ts';
import type { ReadingSlot } from '../../../core/pad/layout.ts';
import type { Profile } from '../../../core/pad/profile.ts';
import { profileById } from '../../../core/pad/profiles.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import { goldenDescriptor } from '../../support/golden-descriptors.ts';
import { hexBytes, parsed } from '../../support/hid-bytes.ts';

function read(
  descriptor: string,
  reportId: number,
  hex: string,
): { outcome: 'reading' | 'other' | Problem; slot: ReadingSlot } {
  const slot = createReadingSlot();
  const outcome = createReadingDecoder(findLayout(parsed(descriptor), null)).read(reportId, hexBytes(hex), slot);
  return { outcome, slot };
}

function profileOf(id: string): Profile {
  const profile = profileById(id);
  if (profile === null) throw new Error(`There is no profile ${id}.`);
  return profile;
}

function readByProfile(id: string, hex: string): ReadingSlot {
  const profile = profileOf(id);
  const slot = createReadingSlot();
  const outcome = createReadingDecoder(findLayout(null, profile)).read(profile.report.reportId, hexBytes(hex), slot);
  expect(outcome).toBe('reading');
  return slot;
}

function buttonsOf(slot: ReadingSlot): number[] {
  return Array.from({ length: 128 }, (_, index) => index + 1).filter(
    (usage) => (((slot.buttons[(usage - 1) >> 5] ?? 0) >>> ((usage - 1) & 31)) & 1) === 1,
  );
}

describe('createReadingDecoder by usages', () => {
  const { descriptorHex } = goldenDescriptor('pad-e');
  const rest = '00'.repeat(54);

  it('reads both sticks, triggers, hat and buttons', () => {
    const { outcome, slot } = read(descriptorHex, 1, `01 02 03 04 12 80 00 05 06 ${rest}`);
    expect(outcome).toBe('reading');
    expect([...slot.axes]).toEqual([1, 2, 3, 4]);
    expect([...slot.triggers]).toEqual([5, 6]);
    expect(slot.hat[0]).toBe(90);
    expect(buttonsOf(slot)).toEqual([1, 12]);
  });

  it('reads a hat at rest as NaN', () => {
    expect(read(descriptorHex, 1, `01 02 03 04 08 00 00 05 06 ${rest}`).slot.hat[0]).toBeNaN();
  });

  it('leaves what the pad does not have NaN', () => {
    const { slot } = read(goldenDescriptor('pad-h').descriptorHex, 0, '10 20 01 02');
    expect([...slot.axes]).toEqual([16, 32, Number.NaN, Number.NaN]);
    expect([...slot.triggers, ...slot.hat]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
    expect(buttonsOf(slot)).toEqual([1, 10]);
  });

  it('lets go of buttons that are up again', () => {
    const decoder = createReadingDecoder(findLayout(parsed(goldenDescriptor('pad-h').descriptorHex), null));
    const slot = createReadingSlot();
    decoder.read(0, hexBytes('80 80 ff 03'), slot);
    expect(buttonsOf(slot)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    decoder.read(0, hexBytes('80 80 00 02'), slot);
    expect(buttonsOf(slot)).toEqual([10]);
  });

  it('reads buttons up to 128', () => {
    const descriptor =
      '05 01 09 05 a1 01 09 30 09 31 14 26 ff 00 75 08 95 02 81 02 05 09 19 01 29 80 25 01 75 01 95 80 81 02 c0';
    const { slot } = read(descriptor, 0, `80 80 ${'00'.repeat(3)} 80 ${'00'.repeat(11)} 80`);
    expect(buttonsOf(slot)).toEqual([32, 128]);
  });

  it('reads the buttons that an array names', () => {
    const descriptor =
      '05 01 09 05 a1 01 09 30 09 31 14 26 ff 00 75 08 95 02 81 02 05 09 19 00 29 0f 25 0f 75 04 95 02 81 00 c0';
    expect(buttonsOf(read(descriptor, 0, '80 80 f3').slot)).toEqual([3, 15]);
    expect(buttonsOf(read(descriptor, 0, '80 80 00').slot)).toEqual([]);
  });

  it('reads a direction pad of switches as a hat', () => {
    const descriptor =
      '05 01 09 05 a1 01 09 30 09 31 14 26 ff 00 75 08 95 02 81 02 19 90 29 93 25 01 75 01 95 08 81 02 c0';
    expect(read(descriptor, 0, '80 80 05').slot.hat[0]).toBeCloseTo(45, 9);
    expect(read(descriptor, 0, '80 80 00').slot.hat[0]).toBeNaN();
  });

  it('passes over reports that carry nothing of a reading, and leaves the slot', () => {
    const { outcome, slot } = read(descriptorHex, 2, '01 02 03');
    expect(outcome).toBe('other');
    expect([...slot.axes].every(Number.isNaN)).toBe(true);
  });

  it('needs the bytes of a reading and no more', () => {
    expect(read(descriptorHex, 1, '01 02 03 04 08 00 00 05 06').outcome).toBe('reading');
    const { outcome, slot } = read(descriptorHex, 1, '01 02 03 04 08 00 00 05');
    expect(outcome).toMatchObject({ code: 'report-too-short', at: 8 });
    expect([...slot.axes].every(Number.isNaN)).toBe(true);
    expect(read(descriptorHex, 1, '').outcome).toMatchObject({ code: 'report-too-short', at: 0 });
  });

  it('reads nothing where no axes are known', () => {
    const decoder = createReadingDecoder(findLayout(null, null));
    expect(decoder.read(0, hexBytes('01 02'), createReadingSlot())).toBe('other');
  });
});

describe('createReadingDecoder by a profile', () => {
  it('unpacks two 12-bit values from three bytes', () => {
    // b0 | (b1 & 15) << 8 and b1 >> 4 | b2 << 4
    const slot = readByProfile('packed-12-bit-both', `00 8e 000000 30988c 210443 ${'00'.repeat(37)}`);
    expect([...slot.axes]).toEqual([0x830, 0x8c9, 0x421, 0x430]);
  });

  it('finds every switch of the three bytes at its own number', () => {
    const slot = readByProfile('packed-12-bit-both', `00 8e 010c80 000000 000000 ${'00'.repeat(37)}`);
    expect(buttonsOf(slot)).toEqual([1, 11, 12, 24]);
  });

  it('has the stick of a right half as the left one', () => {
    const slot = readByProfile('packed-12-bit-right-half', `00 8e 000400 ffffff 30988c ${'00'.repeat(37)}`);
    expect([...slot.axes]).toEqual([0x830, 0x8c9, Number.NaN, Number.NaN]);
    expect(buttonsOf(slot)).toEqual([11]);
  });

  it('reads the report of the demo pads', () => {
    const slot = readByProfile('demo-sensor-counts', '01f07f 02f08e 10 20 12 00 08');
    expect([...slot.axes]).toEqual([0x001, 0x7ff, 0x002, 0x8ef]);
    expect([...slot.triggers]).toEqual([16, 32]);
    expect(slot.hat[0]).toBe(90);
    expect(buttonsOf(slot)).toEqual([1, 16]);
  });
});
