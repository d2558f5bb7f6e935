import { expect, test } from 'vitest';
import {
  domainWords,
  gapsText,
  hexId,
  rateText,
  wholeNumber,
  type PadHealth,
} from '../../../renderer/pads/pad-words.ts';

const health: PadHealth = {
  pad: 'p1',
  state: 'streaming',
  rateHz: 999.6,
  gaps: 0,
  lost: null,
  loopDelayMillis: 1,
  problem: null,
};

test('groups whole numbers by three and writes a true minus', () => {
  expect(wholeNumber(1000)).toBe('1\u202f000');
  expect(wholeNumber(-65_535)).toBe('−65\u202f535');
  expect(wholeNumber(999)).toBe('999');
});

test('says the state where there is no rate', () => {
  expect(rateText(health)).toBe('1\u202f000 reports/s');
  expect(rateText({ ...health, state: 'silent' })).toBe('silent');
  expect(rateText({ ...health, state: 'lost' })).toBe('gone');
  expect(rateText(null)).toBe('waiting for reports');
});

test('never guesses how many reports were lost', () => {
  expect(gapsText(health)).toBe('0 gaps');
  expect(gapsText({ ...health, gaps: 1 })).toBe('1 gap, loss not known');
  expect(gapsText({ ...health, gaps: 2, lost: 5 })).toBe('2 gaps, 5 lost');
});

test('says what the counts mean and writes ids as four digits', () => {
  expect(domainWords('sensor').says).toContain('before the mapping');
  expect(domainWords('reported').says).toContain('for the host only');
  expect(hexId(0x0b)).toBe('000B');
});
