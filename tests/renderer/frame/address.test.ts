import { expect, test } from 'vitest';
import fc from 'fast-check';
import { formatAddress, NOTHING_SELECTED, parseAddress, toDirection, VIEWS } from '../../../renderer/frame/address.ts';

test('an address is read back as it was written, whatever is selected', () => {
  const selected = fc.record({
    view: fc.constantFrom(...VIEWS),
    detail: fc.constant(null),
    stick: fc.constantFrom('left' as const, 'right' as const),
    direction: fc.option(fc.integer({ min: 0, max: 71 }).map((index) => index * 5)),
    survey: fc.option(fc.string({ minLength: 1, maxLength: 64 })),
    against: fc.option(fc.string({ minLength: 1, maxLength: 64 })),
    finding: fc.option(fc.constantFrom('short-range', 'worn-track.2', 'seat-not-flat.17')),
    stage: fc.option(fc.nat(99)),
    sample: fc.option(fc.nat(600_000_000)),
    image: fc.option(fc.constantFrom('0'.repeat(64), 'a1'.repeat(32))),
  });
  fc.assert(
    fc.property(selected, (value) => {
      expect(parseAddress(formatAddress(value))).toEqual(value);
    }),
    { seed: 11 },
  );
});

test('the fitting aid has an address of its own', () => {
  const fitting = { ...NOTHING_SELECTED, detail: 'fitting' as const, stick: 'right' as const };
  expect(formatAddress(fitting)).toBe('#/pad/fitting?stick=right');
  expect(parseAddress('#/pad/fitting?stick=right')).toEqual(fitting);
});

test('an unknown view, stick or direction falls back to nothing selected', () => {
  expect(parseAddress('#/elsewhere?stick=third&direction=north')).toEqual(NOTHING_SELECTED);
  expect(parseAddress('#/workbench/fitting?direction=')).toEqual({ ...NOTHING_SELECTED, view: 'workbench' });
});

test('a fragment that is no address, such as a ticket, is left alone', () => {
  expect(parseAddress('#ticket=4711')).toBeNull();
  expect(parseAddress('')).toBeNull();
});

test('a finding is named by its id and number, and by nothing else', () => {
  expect(parseAddress('#/findings?stick=left&finding=worn-track.2')?.finding).toBe('worn-track.2');
  for (const wrong of ['', 'Worn', 'worn track', '.2', 'worn-track.', '<b>'])
    expect(parseAddress(`#/findings?finding=${encodeURIComponent(wrong)}`)?.finding).toBeNull();
});

test('any angle becomes the nearest of the 72 directions', () => {
  expect(toDirection(57.4)).toBe(55);
  expect(toDirection(358)).toBe(0);
  expect(toDirection(-5)).toBe(355);
  expect(toDirection(-0.4)).toBe(0);
  expect(toDirection(725)).toBe(5);
  expect(toDirection(Number.NaN)).toBeNull();
});
