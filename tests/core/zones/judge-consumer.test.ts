import { describe, expect, it } from 'vitest';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import type { Chain, Stage } from '../../../core/zones/chain.ts';
import type { Consumer } from '../../../core/zones/consumer.ts';
import { judgeConsumer } from '../../../core/zones/judge-consumer.ts';
import { stickUnder } from '../../../core/zones/stick-under.ts';
import { makeBenchStick, makeEvidence, sixTurns } from '../../support/make-evidence.ts';

const axis = { min: 1048, centre: 2048, max: 3048 };
const mapping: StickMapping = { x: axis, y: axis };

function consumerOf(takes: Consumer['takes'], stages: readonly Stage[], needs: number | null = null): Consumer {
  const chains = { left: { stages } };
  return { kind: 'stickwright-consumer', version: 1, name: 'test', takes, chains, needs, source: null };
}

function driverOf(inner: number): Pick<Chain, 'stages'> {
  return { stages: [{ zone: 'scaledRadial', inner, outer: 1 }] };
}

/** Rests 30 counts to the right; the gate is 1,000 counts about the centre, but 900 above it. */
const offCentre = makeEvidence({
  dwells: Array.from({ length: 24 }, () => ({ point: { x: 2078, y: 2048 } })),
  about: { x: 2048, y: 2048 },
  turns: sixTurns((degrees) => (Math.abs(degrees - 90) < 20 ? 900 : 1000)),
});

describe('judgeConsumer', () => {
  it('says how much of full output comes out at rest', () => {
    const cell = judgeConsumer(stickUnder(offCentre, mapping), 'left', consumerOf('pad', []), null);
    expect(cell?.says?.[0]).toBe('leaks');
    expect(cell?.leak).toBeCloseTo(0.03, 12);
  });

  it('lets a driver help the consumer that takes its output, and no other', () => {
    const behind = (takes: Consumer['takes']) =>
      judgeConsumer(stickUnder(offCentre, mapping), 'left', consumerOf(takes, []), driverOf(0.05));
    expect(behind('driver')?.says).not.toContain('leaks');
    expect(behind('driver')?.stages).toHaveLength(1);
    expect(behind('pad')?.says).toContain('leaks');
    expect(behind('pad')?.stages).toEqual([]);
  });

  it('tells the directions that are slow from those that stay below the need', () => {
    const above = [75, 80, 85, 90, 95, 100, 105];
    const needs95 = judgeConsumer(stickUnder(offCentre, mapping), 'left', consumerOf('pad', [], 0.95), null);
    expect(needs95?.neverReaches).toEqual(above);
    expect(needs95?.slow).toEqual([]);
    const needs85 = judgeConsumer(stickUnder(offCentre, mapping), 'left', consumerOf('pad', [], 0.85), null);
    expect(needs85?.neverReaches).toEqual([]);
    expect(needs85?.slow).toEqual(above);
    expect(needs85?.says).toEqual(['leaks', 'slow in some directions']);
  });

  it('calls a rest hidden only when the tolerance radius is', () => {
    const evidence = makeBenchStick({
      seed: 7,
      releases: 24,
      rest: { x: 2050, y: 2047 },
      scatter: 3,
      noise: 0.5,
      gate: 1000,
    });
    const wide = consumerOf('pad', [{ zone: 'radial', inner: 0.1 }]);
    expect(judgeConsumer(stickUnder(evidence, mapping), 'left', wide, null)?.says).toContain('hidden');
    const few = makeEvidence({ dwells: [{ point: { x: 2050, y: 2048 } }] });
    expect(judgeConsumer(stickUnder(few, mapping), 'left', wide, null)?.says).toEqual(['hidden so far']);
  });

  it('has nothing to say without a chain for the stick, and null in words without evidence', () => {
    expect(judgeConsumer(stickUnder(offCentre, mapping), 'right', consumerOf('pad', []), null)).toBeNull();
    const nothing = judgeConsumer(stickUnder(makeEvidence({}), mapping), 'left', consumerOf('pad', []), null);
    expect(nothing).toMatchObject({ says: null, leak: null, slow: [], neverReaches: [] });
  });
});
