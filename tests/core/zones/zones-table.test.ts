import { describe, expect, it } from 'vitest';
import { rangeMapping } from '../../../core/mapping/range-mapping.ts';
import { answerZones } from '../../../core/zones/answer-chain.ts';
import { zonesTable } from '../../../core/zones/zones-table.ts';
import { makeBenchStick } from '../../support/make-evidence.ts';
import type { StickEvidence } from '../../../core/capture/evidence/evidence.ts';

const evidence = makeBenchStick({
  seed: 2,
  releases: 24,
  rest: { x: 2100, y: 2000 },
  scatter: 4,
  noise: 1,
  gate: 1500,
});

function values(of: StickEvidence, inner: number): Map<string, string> {
  const mapping = rangeMapping(of.fields);
  const stages = [{ zone: 'radial', inner }] as const;
  const answer = answerZones(of, mapping, {
    kind: 'stickwright-chain',
    version: 1,
    name: 'usual',
    stages,
    needs: 0.99,
  });
  const [section] = zonesTable({
    kind: 'stickwright-zones',
    version: 1,
    chain: 'usual',
    sticks: { left: { ...answer, mappingFrom: 'range' } },
  });
  expect(section?.title).toBe('left stick behind usual');
  return new Map(section?.rows.map((one) => [one.label, one.value]));
}

describe('zonesTable', () => {
  it('says whether the rest is hidden, at what onset, and where the need is missed', () => {
    const table = values(evidence, 0.2);
    expect(table.get('rest')).toBe('hidden');
    expect(table.get('leaking releases')).toBe('0 of 24');
    expect(table.get('share that leaks, at most (95 %)')).toBe('11.7');
    expect(table.get('directions without output before the gate')).toBe('none');
    expect(table.get('directions below the need')).toMatch(/^0° 5° 10°/);
    // The offset points to the lower right: most push is swallowed to the upper left.
    const angle = Number(/ at (\d+)°/.exec(table.get('onset, largest') ?? '')?.[1]);
    expect(angle).toBeGreaterThan(90);
    expect(angle).toBeLessThan(180);
  });

  it('says where nothing comes out, and writes a dash for what has no capture', () => {
    expect(values(evidence, 1.2).get('directions without output before the gate')).toMatch(/^0° 5°/);
    const bare = values({ ...evidence, rest: null, rim: null }, 0.2);
    expect(bare.get('rest')).toBe('no settled release');
    expect(bare.get('onset, least')).toBe('–');
    expect(bare.get('directions below the need')).toBe('–');
  });
});
