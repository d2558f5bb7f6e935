import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stage } from '../../../core/zones/chain.ts';
import type { Consumer } from '../../../core/zones/consumer.ts';
import { driverZone, smallestDriverSetting, type SurveyedRest } from '../../../core/zones/driver-setting.ts';
import { compileChain } from '../../../core/zones/run-chain.ts';
import { sensorFields } from '../../support/fields.ts';
import { makeDwell } from '../../support/make-evidence.ts';

const axis = { min: 1048, centre: 2048, max: 3048 };

function surveyOf(x: number, y: number, toleranceRadius: number | null = null): SurveyedRest {
  const dwells = [makeDwell({ point: { x: 2048 + x, y: 2048 + y } })];
  return { dwells, fields: sensorFields, mapping: { x: axis, y: axis }, toleranceRadius };
}

function consumerOf(stages: readonly Stage[], takes: Consumer['takes'] = 'driver'): Consumer {
  const chains = { left: { stages } };
  return { kind: 'stickwright-consumer', version: 1, name: 'Test', takes, chains, needs: null, source: null };
}

describe('smallestDriverSetting', () => {
  it('is the largest rest of all surveys for a consumer without a zone of its own', () => {
    const setting = smallestDriverSetting([surveyOf(30, 40), surveyOf(-10, 5)], 'left', consumerOf([]));
    expect(setting?.observed).toBeCloseTo(0.05, 6);
    expect(setting?.why).toBeNull();
  });

  it('is smaller where the consumer hides a part by itself: the driver need only bring the rest into its zone', () => {
    const consumer = consumerOf([{ zone: 'radial', inner: 0.03 }]);
    const setting = smallestDriverSetting([surveyOf(50, 0)], 'left', consumer);
    // (0.05 − d)/(1 − d) = 0.03
    expect(setting?.observed).toBeCloseTo((0.05 - 0.03) / (1 - 0.03), 6);
  });

  it('is 0 where no driver is needed', () => {
    const setting = smallestDriverSetting([surveyOf(50, 0)], 'left', consumerOf([{ zone: 'radial', inner: 0.06 }]));
    expect(setting).toMatchObject({ observed: 0, why: null });
  });

  it('covers the tolerance radius of every survey, and is null while one has none', () => {
    const both = [surveyOf(10, 0, 0.04), surveyOf(5, 0, 0.07)];
    expect(smallestDriverSetting(both, 'left', consumerOf([]))?.tolerance99).toBeCloseTo(0.07, 6);
    expect(smallestDriverSetting([...both, surveyOf(0, 0)], 'left', consumerOf([]))?.tolerance99).toBeNull();
  });

  it('says why no setting helps', () => {
    const pad = smallestDriverSetting([surveyOf(30, 0)], 'left', consumerOf([], 'pad'));
    expect(pad?.observed).toBeNull();
    expect(pad?.why).toContain("takes the pad's own output");
    const even = consumerOf([{ quantise: { bits: 8, levels: 'even' } }]);
    expect(smallestDriverSetting([surveyOf(30, 0)], 'left', even)?.why).toContain('output even of nothing');
  });

  it('hides every reading, and nothing clearly smaller does', () => {
    const place = fc.record({ x: fc.integer({ min: -200, max: 200 }), y: fc.integer({ min: -200, max: 200 }) });
    const inner = fc.double({ min: 0, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 6 }), inner, (places, own) => {
        const stages: Stage[] = [{ zone: 'axial', inner: own }];
        const setting = smallestDriverSetting(
          places.map(({ x, y }) => surveyOf(x, y)),
          'left',
          consumerOf(stages),
        );
        const hides = (d: number): boolean => {
          const run = compileChain({ stages: d === 0 ? stages : [driverZone(d), ...stages] });
          const out = new Float64Array(2);
          return places.every(({ x, y }) => {
            run(x / 1000, -y / 1000, out);
            return out[0] === 0 && out[1] === 0;
          });
        };
        const found = setting?.observed ?? Number.NaN;
        expect(hides(found)).toBe(true);
        if (found > 1e-4) expect(hides(found - 1e-4)).toBe(false);
      }),
      { seed: 11, numRuns: 60 },
    );
  });
});
