import { describe, expect, test } from 'vitest';
import type { Consumer } from '../../../../core/zones/consumer.ts';
import { answersTable } from '../../../../renderer/chain/answer-rows.ts';
import { cellOf, settingText, surveyedRest, triggerText } from '../../../../renderer/chain/consumers/consumer-cells.ts';
import { sayStretches } from '../../../../renderer/chain/direction-stretches.ts';
import { answerZones } from '../../../../core/zones/answer-chain.ts';
import { stickUnder } from '../../../../core/zones/stick-under.ts';
import { makeEvidence, sixTurns } from '../../../support/make-evidence.ts';
import { headOf } from '../../../../renderer/kit/figures/table.ts';
import { drawnRows } from '../../support/drawn-rows.ts';

const axis = { min: 1048, centre: 2048, max: 3048 };
const mapping = { x: axis, y: axis };
const dwells = Array.from({ length: 24 }, (_, i) => ({ point: { x: 2048 + 50 + (i % 3), y: 2048 } }));
const evidence = makeEvidence({ dwells, turns: sixTurns(() => 1000), about: { x: 2048, y: 2048 } });
const at = { stick: 'left', under: stickUnder(evidence, mapping) } as const;

function consumer(inner: number, wish: Partial<Consumer> = {}): Consumer {
  const chain = { stages: [{ zone: 'scaledRadial', inner, outer: 1 } as const] };
  return { kind: 'stickwright-consumer', version: 1, name: 'C', takes: 'driver', chains: { left: chain }, needs: null, source: null, ...wish }; // prettier-ignore
}

describe('a cell of the matrix', () => {
  test('is hidden behind a wide zone and leaks behind a narrow one, and says how fast', () => {
    expect(cellOf(at, consumer(0.2), null)).toMatchObject({ kind: 'good', says: 'hidden' });
    const leaking = cellOf(at, consumer(0.01), null);
    expect(leaking.kind).toBe('bad');
    expect(leaking.says).toMatch(/^leaks, up to 4\.\d.% of full speed/u);
  });

  test('says where it never reaches, and that it has no chain for a stick', () => {
    const never = cellOf(at, consumer(0.2, { needs: 1.2 }), null);
    expect(never.says).toContain('never reaches every direction');
    expect(cellOf({ ...at, stick: 'right' }, consumer(0.2), null)).toMatchObject({ kind: 'none', answer: null });
  });

  test('a consumer that takes the pad sees nothing of the driver', () => {
    const driver = { kind: 'stickwright-chain', version: 1, name: 'd', stages: [{ zone: 'radial', inner: 0.3 }], needs: null } as const; // prettier-ignore
    expect(cellOf(at, consumer(0.01), driver).kind).not.toBe('bad');
    expect(cellOf(at, consumer(0.01, { takes: 'pad' }), driver).kind).toBe('bad');
  });
});

test('a trigger that is free and comes all the way says so', () => {
  const extent = { min: 0, max: 255, back: 0, fieldMinimum: 0, fieldMaximum: 255 };
  const trigger = consumer(0.1, { chains: { trigger: { stages: [] } } });
  expect(triggerText(extent, trigger, null)).toMatch(/^free at rest; 100\.0.% pulled$/u);
  expect(triggerText({ ...extent, min: 20 }, trigger, null)).toContain('leaks');
  expect(triggerText(extent, consumer(0.1), null)).toBeNull();
});

test('settings are told for what was seen and for 99 %, and none where none helps', () => {
  expect(settingText({ observed: 0.031, tolerance99: 0.05, why: null })).toMatch(
    /3\.1.% for what was seen, 5\.0.% for 99 %/u,
  );
  expect(settingText({ observed: 0, tolerance99: 0, why: null })).toBe('none needed');
  expect(settingText({ observed: null, tolerance99: null, why: 'It makes output of nothing.' })).toBe('none helps');
  expect(surveyedRest(makeEvidence({ dwells: null, turns: null }), mapping)).toBeNull();
});

test('neighbouring directions are one stretch, over 0° too', () => {
  expect(sayStretches([355, 0, 5, 90])).toBe('90°, 355° to 5°');
  expect(sayStretches(Array.from({ length: 72 }, (_, i) => 5 * i))).toBe('every direction');
  expect(sayStretches([])).toBe('');
});

test('the answers of a chain stand as rows, a dash where nothing can be said', () => {
  const chain = { kind: 'stickwright-chain', version: 1, name: 'c', stages: [{ zone: 'radial', inner: 0.1 }], needs: 0.9 } as const; // prettier-ignore
  const zones = [answerZones(evidence, mapping, chain), answerZones(makeEvidence({}), mapping, chain)];
  const table = answersTable([
    { tone: 'now', zones: zones[0]! },
    { tone: 'proposed', zones: zones[1]! },
  ]);
  const rows = drawnRows(table);
  expect(table.heads.map((head) => headOf(head).says)).toEqual(['answer', 'now', 'proposed']);
  expect(rows.find(([label]) => label === 'hides the rest')).toEqual(['hides the rest', 'hidden', '—']);
  expect(rows.find(([label]) => label === 'below the need')).toEqual(['below the need', 'none', '—']);
  expect(table.rows[1]?.[1]).toEqual({
    says: `0 of ${String(zones[0]!.leaks!.releases)}`,
    beside: expect.stringMatching(/^≤\u00a0\d/u) as string,
  });
});
