import { describe, expect, it } from 'vitest';
import { checkName, keepUnder, withoutName } from '../../../renderer/stick/kept-mappings.ts';
import { mapping } from '../support/bench-stick.ts';

const source = {
  product: 'Bench pad',
  pad: { vendorId: 1, productId: 2, serial: 'a', unit: null },
  domain: 'sensor',
} as const;

describe('kept mappings', () => {
  it('are replaced under their name, while the stick that is not given stays', () => {
    const first = keepUnder([], ' soft spring ', source, { left: mapping });
    const other = keepUnder(first, 'hard', source, { left: mapping });
    const both = keepUnder(other, 'soft spring', source, { right: mapping });
    expect(both.map(({ name }) => name)).toEqual(['soft spring', 'hard']);
    expect(Object.keys(both[0]?.sticks ?? {})).toEqual(['left', 'right']);
    expect(withoutName(both, 'hard').map(({ name }) => name)).toEqual(['soft spring']);
  });

  it('want a name of a sensible length', () => {
    expect(checkName('  ')).toContain('Write a name');
    expect(checkName('x'.repeat(81))).toContain('81 letters');
    expect(checkName('fine')).toBeNull();
  });

  it('of one name are of one pad: the other pad’s stays', () => {
    const kept = keepUnder([], 'soft', source, { left: mapping });
    const other = { ...source, pad: { ...source.pad, serial: 'b' } };
    expect(checkName(' soft', kept, other)).toContain('another pad');
    expect(checkName('soft', kept, source)).toBeNull();
    expect(kept[0]?.pad).toEqual(source.pad);
  });
});
