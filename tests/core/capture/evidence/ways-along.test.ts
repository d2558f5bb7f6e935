import { describe, expect, it } from 'vitest';
import { waysAlong } from '../../../../core/capture/evidence/ways-along.ts';
import { sensorFields } from '../../../support/fields.ts';
import { makeTurn } from '../../../support/make-evidence.ts';

const made = (startUs: number) =>
  makeTurn({ way: 'clockwise', radius: () => 1000 }, { x: 2048, y: 2048 }, sensorFields, startUs);

describe('ways along the gate', () => {
  it('are the whole turns, then the parts', () => {
    const [first, second, part] = [made(1), made(2), made(0)];
    expect(waysAlong({ turns: [first, second], parts: [part] })).toEqual([first, second, part]);
    const turns = [first];
    expect(waysAlong({ turns })).toBe(turns);
    expect(waysAlong({ turns: [], parts: [part] })).toEqual([part]);
  });
});
