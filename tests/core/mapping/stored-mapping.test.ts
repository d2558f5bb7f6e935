import { describe, expect, it } from 'vitest';
import { storedMapping } from '../../../core/mapping/stored-mapping.ts';

function stick(min: number) {
  return { x: { min, centre: 2000, max: 3700 }, y: { min, centre: 2000, max: 3700 } };
}

function layers(t: number, user: unknown, factory: unknown) {
  return { t, name: 'layers', detail: { layers: { user, factory } } };
}

describe('storedMapping', () => {
  it('takes the user layer before the factory layer, stick by stick', () => {
    const marks = [layers(0, { left: stick(1) }, { left: stick(2), right: stick(3) })];
    expect(storedMapping(marks)).toEqual({ left: stick(1), right: stick(3) });
  });

  it('passes over a mapping in the user layer that cannot be one', () => {
    expect(storedMapping([layers(0, { left: stick(4095) }, { left: stick(2) })])).toEqual({ left: stick(2) });
  });

  it('takes the last mark', () => {
    const marks = [layers(0, { left: stick(1) }, null), layers(9, { left: stick(5) }, null)];
    expect(storedMapping(marks)).toEqual({ left: stick(5) });
  });

  it('is null without a mark, without layers in it, and without a good mapping', () => {
    expect(storedMapping([])).toBeNull();
    expect(storedMapping([{ t: 0, name: 'layers', detail: {} }])).toBeNull();
    expect(storedMapping([{ t: 0, name: 'turn', detail: { layers: { user: { left: stick(1) } } } }])).toBeNull();
    expect(storedMapping([layers(0, { left: stick(4095) }, null)])).toBeNull();
  });
});
