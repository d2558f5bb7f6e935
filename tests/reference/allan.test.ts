import { describe, expect, it } from 'vitest';
import { overlappingAllanDeviation } from '../../core/numeric/allan.ts';
import { expectRelative } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

type Published = Record<string, { OADEV: number }>;

const { nbs14_9, lcg1000 } = readGolden('allan') as {
  nbs14_9: { frequency: number[]; published: Published };
  lcg1000: { firstIntegers: number[]; lastInteger: number; published: Published };
};

/** NIST SP 1065, 12.4: n₀ = 1234567890, nᵢ₊₁ = 16807 nᵢ mod 2147483647; products stay below 2⁵³. */
function portableRandomIntegers(count: number): number[] {
  const integers = [1234567890];
  while (integers.length < count) integers.push((16807 * integers.at(-1)!) % 2147483647);
  return integers;
}

describe('overlapping Allan deviation', () => {
  it.each(Object.entries(nbs14_9.published))(
    'NBS Monograph 140, nine frequencies, as in NIST SP 1065: factor %s to the printed digits (seen)',
    (factor, { OADEV }) => {
      expectRelative(overlappingAllanDeviation(nbs14_9.frequency, Number(factor))!, OADEV, 5e-7);
    },
  );

  const integers = portableRandomIntegers(1000);

  it('makes the 1,000 portable random numbers of NIST SP 1065 as the source does (seen)', () => {
    expect(integers.slice(0, 4)).toEqual(lcg1000.firstIntegers);
    expect(integers.at(-1)).toBe(lcg1000.lastInteger);
  });

  it.each(Object.entries(lcg1000.published))(
    'NIST SP 1065, 1,000 random numbers: factor %s to the printed digits (seen)',
    (factor, { OADEV }) => {
      const values = integers.map((integer) => integer / 2147483647);
      expectRelative(overlappingAllanDeviation(values, Number(factor))!, OADEV, 5e-7);
    },
  );
});
