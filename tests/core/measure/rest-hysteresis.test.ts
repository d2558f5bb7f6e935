import { describe, expect, it } from 'vitest';
import { restHysteresis } from '../../../core/measure/rest-hysteresis.ts';
import { reportedFields, sensorFields } from '../../support/fields.ts';
import { makeDwell } from '../../support/make-evidence.ts';

const right = { x: 1, y: 0 };
const left = { x: -1, y: 0 };
const up = { x: 0, y: 1 };
const down = { x: 0, y: -1 };

describe('restHysteresis', () => {
  it('is the mean rest approached from + minus that approached from −', () => {
    const dwells = [
      makeDwell({ point: { x: 104, y: 100 }, from: right }),
      makeDwell({ point: { x: 102, y: 100 }, from: right }),
      makeDwell({ point: { x: 98, y: 100 }, from: left }),
      makeDwell({ point: { x: 100, y: 95 }, from: up }),
      makeDwell({ point: { x: 100, y: 98 }, from: down }),
    ];
    expect(restHysteresis(dwells, sensorFields)).toEqual({ x: 5, y: -3 });
  });

  it('turns y where its count grows downwards', () => {
    const dwells = [
      makeDwell({ point: { x: 100, y: 95 }, from: up }),
      makeDwell({ point: { x: 100, y: 98 }, from: down }),
    ];
    expect(restHysteresis(dwells, reportedFields)).toEqual({ x: null, y: 3 });
  });

  it('leaves a release from nearly across an axis out of that axis', () => {
    const across = { x: Math.cos(1.4), y: Math.sin(1.4) };
    const dwells = [
      makeDwell({ point: { x: 900, y: 104 }, from: across }),
      makeDwell({ point: { x: 102, y: 100 }, from: right }),
      makeDwell({ point: { x: 98, y: 100 }, from: left }),
    ];
    expect(restHysteresis(dwells, sensorFields).x).toBe(4);
  });

  it('is null without knowing from where', () => {
    const dwells = [makeDwell({ point: { x: 1, y: 1 } }), makeDwell({ point: { x: 2, y: 2 } })];
    expect(restHysteresis(dwells, sensorFields)).toEqual({ x: null, y: null });
  });
});
