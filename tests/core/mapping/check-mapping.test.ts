import { describe, expect, it } from 'vitest';
import { checkMapping } from '../../../core/mapping/check-mapping.ts';
import type { AxisMapping } from '../../../core/mapping/mapping.ts';

const good: AxisMapping = { min: 300, centre: 2000, max: 3700 };
const layer = { whole: true, least: 0, greatest: 4095 };

describe('checkMapping', () => {
  it('takes whole counts in order, and a centre of .5 that is not stored', () => {
    expect(checkMapping({ x: good, y: good })).toBeNull();
    expect(checkMapping({ x: { min: 0, centre: 127.5, max: 255 }, y: good })).toBeNull();
    expect(checkMapping({ x: good, y: good }, layer)).toBeNull();
  });

  it.each<[string, Partial<AxisMapping>, string]>([
    ['mapping-min-not-below-centre', { min: 2000 }, 'min'],
    ['mapping-min-not-below-centre', { min: 2500 }, 'min'],
    ['mapping-max-not-above-centre', { max: 2000 }, 'max'],
    ['mapping-not-a-number', { centre: Number.NaN }, 'centre'],
    ['mapping-infinite', { max: Number.POSITIVE_INFINITY }, 'max'],
    ['mapping-infinite', { min: Number.NEGATIVE_INFINITY }, 'min'],
    ['mapping-not-whole', { min: 300.5 }, 'min'],
    ['mapping-not-whole', { centre: 2000.25 }, 'centre'],
  ])('refuses by name: %s %o', (code, change, number) => {
    const problem = checkMapping({ x: good, y: { ...good, ...change } });
    expect(problem?.code).toBe(code);
    expect(problem?.says).toContain(`y.${number}`);
  });

  it('refuses in a layer what the layer cannot hold', () => {
    expect(checkMapping({ x: { ...good, centre: 2000.5 }, y: good }, layer)?.code).toBe('mapping-not-whole');
    expect(checkMapping({ x: { ...good, max: 4096 }, y: good }, layer)?.code).toBe('mapping-outside-layer');
    expect(checkMapping({ x: { ...good, min: -1 }, y: good }, layer)?.says).toContain('x.min is -1');
  });
});
