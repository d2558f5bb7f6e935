import { describe, expect, it } from 'vitest';
import { factorySentence, usualLayer, usualSticks } from '../../../renderer/memory/plan-defaults.ts';

const layer = (name: 'factory' | 'user') => ({ layer: name, marker: 'valid' as const, checksum: null, sticks: [] });
const layers = [layer('factory'), layer('user')];
const host = (name: 'factory' | 'user' | null) => ({ host: 'a host', layer: name, sticks: {} });

describe('what a plan begins with', () => {
  it('is the layer that the first host takes, or the first that any takes', () => {
    expect(usualLayer({ layers, hosts: [host('user'), host('factory')] })).toBe('user');
    expect(usualLayer({ layers, hosts: [host(null), host('factory')] })).toBe('factory');
    expect(usualLayer({ layers, hosts: [] })).toBe('factory');
  });

  it('is the sticks whose verdict asks for new numbers, and none where none does', () => {
    const sticks = { held: ['left', 'right'] as const, owns: {}, kept: {} };
    expect(usualSticks({ ...sticks, kind: 'proposal', verdicts: { left: 'keep', right: 'recalibrate' } })).toEqual(['right']); // prettier-ignore
    expect(usualSticks({ ...sticks, kind: 'proposal', verdicts: { left: 'keep', right: 'replace' } })).toEqual([]);
  });

  it('is what a hand made or named numbers for, and all that is carried', () => {
    const sticks = { held: ['left', 'right'] as const, verdicts: {}, owns: { left: 1 }, kept: { right: 1 } };
    expect(usualSticks({ ...sticks, kind: 'yours' })).toEqual(['left']);
    expect(usualSticks({ ...sticks, kind: 'proposal' })).toEqual([]);
    expect(usualSticks({ ...sticks, kind: 'kept' })).toEqual(['right']);
    expect(usualSticks({ ...sticks, kind: 'user:factory' })).toEqual(['left', 'right']);
  });

  it('says of the factory layer what it is, and of no other', () => {
    expect([factorySentence('factory') !== null, factorySentence('user')]).toEqual([true, null]);
  });
});
