import fc from 'fast-check';
import { expect, it } from 'vitest';
import { LatestMedian } from '../../../../core/capture/evidence/latest-median.ts';

it('is the median of the latest numbers, whatever came before', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 60 }), (numbers) => {
      const latest = new LatestMedian(7);
      numbers.forEach((number, i) => {
        latest.add(number);
        const kept = numbers.slice(Math.max(0, i - 6), i + 1).toSorted((a, b) => a - b);
        expect(latest.median).toBe(kept[kept.length >> 1]);
      });
    }),
    { seed: 3, numRuns: 200 },
  );
});

it('has no median without numbers, also after it was cleared', () => {
  const latest = new LatestMedian(3);
  expect(latest.median).toBeNaN();
  latest.add(4);
  latest.clear();
  expect(latest.median).toBeNaN();
  latest.add(2);
  expect(latest.median).toBe(2);
});
