import { expect, test } from 'vitest';
import { padMark, padMarks, sayPad, wholePadName, type OfPad } from '../../../core/pad/pad-name.ts';

function of(serial: string | null, unit: string | null = null, product = 'Pad'): OfPad {
  return { product, pad: { vendorId: 0x1209, productId: 0x000a, serial, unit } };
}

test('a pad is told by its serial number, else by its unit, else by a number of its own in the list', () => {
  const list = [of('A1'), of(null, '0a1b'), of(null), of('A1'), of('0000'), of(null, null, 'Other'), of(null)];
  expect(padMarks(list)).toEqual([
    'A1',
    'unit 0a1b',
    'no serial number, 1st',
    'A1',
    'no serial number, 2nd',
    'no serial number',
    'no serial number, 3rd',
  ]);
  expect(padMark(null)).toBeNull();
});

test('in a list of pads two with the same serial number are numbered too', () => {
  expect(padMarks([of('A1'), of('B2'), of('A1')], 'pads')).toEqual(['A1, 1st', 'B2', 'A1, 2nd']);
});

test('numbers are written as they are spoken', () => {
  const marks = padMarks(Array.from({ length: 23 }, () => of(null)));
  expect([10, 11, 12, 20, 21, 22].map((index) => marks[index]?.split(', ')[1])).toEqual([
    '11th',
    '12th',
    '13th',
    '21st',
    '22nd',
    '23rd',
  ]);
});

test('the whole name says what is known and what is not', () => {
  expect(wholePadName(of('A1'))).toBe('Pad, 1209:000a, serial number A1');
  expect(wholePadName({ product: 'Pad', pad: null })).toBe('Pad, pad not known');
  expect([of('A1'), of(null, '0a1b'), of('')].map(sayPad)).toEqual([
    'Pad, serial number A1',
    'Pad, unit 0a1b',
    'Pad, no serial number',
  ]);
});
