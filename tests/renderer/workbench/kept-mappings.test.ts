import { describe, expect, it } from 'vitest';
import { checkName, keepUnder, withoutName } from '../../../renderer/views/workbench/kept-mappings.ts';
import { mapping } from './bench-stick.ts';

describe('kept mappings', () => {
  it('are replaced under their name, while the stick that is not given stays', () => {
    const first = keepUnder([], ' soft spring ', 'Bench pad', { left: mapping });
    const other = keepUnder(first, 'hard', 'Bench pad', { left: mapping });
    const both = keepUnder(other, 'soft spring', 'Bench pad', { right: mapping });
    expect(both.map(({ name }) => name)).toEqual(['soft spring', 'hard']);
    expect(Object.keys(both[0]?.sticks ?? {})).toEqual(['left', 'right']);
    expect(withoutName(both, 'hard').map(({ name }) => name)).toEqual(['soft spring']);
  });

  it('want a name of a sensible length', () => {
    expect(checkName('  ')).toContain('Write a name');
    expect(checkName('x'.repeat(81))).toContain('81 letters');
    expect(checkName('fine')).toBeNull();
  });
});
