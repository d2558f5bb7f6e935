import { describe, expect, it } from 'vitest';
import { findLayers } from '../../../core/findings/find-layers.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeSubject } from './make-subject.ts';

const factory = { x: { min: 800, centre: 2048, max: 3300 }, y: { min: 700, centre: 2050, max: 3400 } };

function find(x: Partial<typeof factory.x>, y: Partial<typeof factory.y> = {}) {
  const user = { x: { ...factory.x, ...x }, y: { ...factory.y, ...y } };
  return findLayers(makeSubject({ subject: { layers: { user, factory }, half: { x: 1000, y: 2000 } } }), defaultLimits);
}

describe('findLayers', () => {
  it('takes the largest difference of one number in shares of the half travel of its axis', () => {
    const found = find({ centre: 2108, max: 3252 }, { min: 800 })!;
    // 60 of 1000, 48 of 1000 and 100 of 2000.
    expect(found).toMatchObject({ value: 0.06, u95: 0, limit: 0.04, decision: 'fail', severity: 'caution' });
    expect(found.says).toContain(
      "user layer's x.centre of the left stick is 60 counts above the factory layer's, 6.0 %",
    );
    expect(found.for).toEqual(['x.max differs by 48 counts.', 'y.min differs by 100 counts.']);
    expect(find({}, { max: 3200 })).toMatchObject({ value: 0.1 });
    expect(find({}, { max: 3200 })?.says).toContain('y.max of the left stick is 200 counts below');
  });

  it('is exact: it passes just below the limit and fails just above', () => {
    expect([41, 40, 39].map((counts) => find({ min: 800 - counts })?.decision)).toEqual(['fail', 'cannot say', 'pass']);
    expect(find({})).toMatchObject({ value: 0, decision: 'pass', for: [] });
  });

  it('is absent without both layers', () => {
    const only = (layers: { user: typeof factory | null; factory: typeof factory | null } | null) =>
      findLayers(makeSubject({ subject: { layers } }), defaultLimits);
    expect([only(null), only({ user: factory, factory: null }), only({ user: null, factory })]).toEqual([
      null,
      null,
      null,
    ]);
  });
});
