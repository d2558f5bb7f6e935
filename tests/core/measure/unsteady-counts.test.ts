import { describe, expect, it } from 'vitest';
import { cleanSeries, makeSeries, type CleanSeries } from '../../../core/measure/axis-series.ts';
import { unsteadyCounts } from '../../../core/measure/unsteady-counts.ts';
import { createRandom } from '../../../core/numeric/random.ts';

interface Wish {
  readonly noise?: number;
  /** σ of the readings between counts 1000 and 1060. */
  readonly worn?: number;
  readonly lost?: (index: number) => boolean;
  readonly slow?: (index: number) => boolean;
}

/** Four ways over counts 500 … 1500 at one reading a millisecond and half a count a reading. */
function series({ noise = 1, worn = noise, lost = () => false, slow = () => true }: Wish): CleanSeries[] {
  const random = createRandom(8);
  return [0, 1, 2, 3].map((way) => {
    const told = Array.from({ length: 2000 }, (_, i) => {
      const place = way % 2 === 0 ? 500 + i / 2 : 1500 - i / 2;
      const sigma = place >= 1000 && place <= 1060 ? worn : noise;
      return { t: 1000 * i, u: Math.round(place + sigma * random.normal()), i };
    }).filter(({ i }) => !lost(i));
    const made = makeSeries(
      Float64Array.from(told, ({ t }) => t),
      Float64Array.from(told, ({ u }) => u),
    );
    return cleanSeries(
      made,
      Uint8Array.from(told, ({ i }) => Number(slow(i))),
      1000,
      1,
    );
  });
}
const stretches = (wish: Wish) => unsteadyCounts(series(wish), 500, 1500, 1);

/** One report in 40 is lost. */
const oneLost = (index: number): boolean => index % 40 === 20;
/** A pace of 20 counts a reading, so that a lost one makes a second difference of 20. */
function fast(lost: (index: number) => boolean): CleanSeries[] {
  return Array.from({ length: 60 }, (_, way) => {
    const told = Array.from({ length: 50 }, (__, i) => ({ t: 1000 * i, u: 500 + 20 * i + (way % 20) })).filter(
      (_one, i) => !lost(i),
    );
    const made = makeSeries(
      Float64Array.from(told, ({ t }) => t),
      Float64Array.from(told, ({ u }) => u),
    );
    return cleanSeries(made, new Uint8Array(told.length).fill(1), 1000, 1);
  });
}

describe('unsteady counts', () => {
  it('are a stretch whose readings are several times as restless as the rest', () => {
    expect(stretches({})).toEqual([]);
    const [found, ...others] = stretches({ worn: 6 })!;
    expect(others).toEqual([]);
    expect(found!.from).toBeGreaterThan(985);
    expect(found!.from).toBeLessThan(1012);
    expect(found!.to).toBeGreaterThan(1048);
    expect(found!.to).toBeLessThan(1075);
    // 6 times, thinned out a little at either end.
    expect(found!.times).toBeGreaterThan(4);
    expect(found!.times).toBeLessThan(7);
  });

  it('are none where a report was lost: what the stick went meanwhile is no unsteadiness', () => {
    expect(
      unsteadyCounts(
        fast(() => false),
        500,
        1500,
        1,
      ),
    ).toEqual([]);
    // Every way lacks the reading at count 900 or so, and the next interval is twice the usual one.
    expect(
      unsteadyCounts(
        fast((i) => i === 20),
        500,
        1500,
        1,
      ),
    ).toEqual([]);
    expect(stretches({ lost: oneLost })).toEqual([]);
    expect(stretches({ lost: oneLost, worn: 6 })).toHaveLength(1);
  });

  it('count slow readings alone', () => {
    // Of the first way and back the worn place lies at readings 1000 to 1120 and 880 to 1000.
    const beside = (index: number): boolean => index < 870 || index > 1130;
    expect(stretches({ worn: 6, slow: beside })).toEqual([]);
  });

  it('are not told where reports come unevenly, or where windows cover too little of the travel', () => {
    const uneven = series({}).map((one) => ({ ...one, t: one.t.map((t, i) => t + (i % 3 === 0 ? 600 : 0)) }));
    expect(unsteadyCounts(uneven, 500, 1500, 1)).toBeNull();
    expect(unsteadyCounts(series({}).slice(0, 1), 500, 1500, 1)).not.toBeNull();
    expect(unsteadyCounts(series({ slow: (i) => i < 1400 }).slice(0, 1), 500, 1500, 1)).toBeNull();
  });
});
