import { describe, expect, it } from 'vitest';
import type { Aim, ProposalWish } from '../../../core/proposal/proposal.ts';
import { solveMapping } from '../../../core/proposal/solve.ts';
import { makeEvidence, sixTurns } from '../../support/make-evidence.ts';

const centre = { x: 2048, y: 2048 };
const far = { min: 848, centre: 2048, max: 3248 };
const wish: ProposalWish = {
  aim: 'even',
  centreBy: 'mean',
  guard: 0.25,
  widestGap: 10,
  current: { x: far, y: far },
  limits: { whole: true, least: 0, greatest: 4095 },
  seed: 1,
};
const round = makeEvidence({ turns: sixTurns(() => 1000), about: centre });
/** A round gate with so many degrees uncovered from 100° on. */
const gapped = (degrees: number) =>
  makeEvidence({ turns: sixTurns((angle) => (angle >= 100 && angle < 100 + degrees ? null : 1000)), about: centre });
const axis = (span: number) => ({ min: 2048 - span, centre: 2048, max: 2048 + span });

describe('solveMapping', () => {
  it('for even lays full output on a round gate', () => {
    expect(solveMapping(round, centre, wish)).toEqual({ ok: true, value: { x: axis(1000), y: axis(1000) } });
  });

  it('for full-reach stays inside of it by the guard', () => {
    const asked = { ...wish, aim: 'full-reach' as const };
    expect(solveMapping(round, centre, asked)).toEqual({ ok: true, value: { x: axis(800), y: axis(800) } });
  });

  it('holds full-reach to the gap that is allowed, even to a quarter at most, and full-reach never to more', () => {
    const isSolved = (aim: Aim, degrees: number, widestGap: number) =>
      solveMapping(gapped(degrees), centre, { ...wish, aim, widestGap }).ok;
    expect([isSolved('full-reach', 10, 10), isSolved('full-reach', 15, 10)]).toEqual([true, false]);
    expect([isSolved('even', 85, 10), isSolved('even', 90, 360)]).toEqual([true, false]);
    expect([isSolved('full-reach', 85, 360), isSolved('full-reach', 90, 360)]).toEqual([true, false]);
    expect(isSolved('edges', 90, 0)).toBe(true);
  });

  it('says the aim that was refused', () => {
    const refused = solveMapping(gapped(40), centre, { ...wish, aim: 'full-reach' });
    expect(refused.ok ? '' : refused.problem.says).toContain('from 100° to 135°');
    expect(refused.ok ? '' : refused.problem.says).toContain('ask for full-reach again');
  });

  it('refuses edges without a turn, and a mapping that the layer cannot hold', () => {
    const asked = { ...wish, aim: 'edges' as const };
    for (const evidence of [makeEvidence({}), makeEvidence({ turns: [] })])
      expect(solveMapping(evidence, centre, asked)).toMatchObject({ ok: false, problem: { code: 'proposal-no-turn' } });
    const narrow = { ...asked, limits: { whole: true, least: 1100, greatest: 3000 } };
    expect(solveMapping(round, centre, narrow)).toMatchObject({
      ok: false,
      problem: { code: 'mapping-outside-layer' },
    });
  });

  it('keeps to the layer where it may choose', () => {
    const narrow = { ...wish, aim: 'full-reach' as const, limits: { whole: true, least: 1448, greatest: 2548 } };
    const solved = solveMapping(round, centre, narrow);
    // 500 counts are left toward the greatest, 600 toward the least.
    expect(solved).toEqual({
      ok: true,
      value: { x: { min: 1448, centre: 2048, max: 2548 }, y: { min: 1448, centre: 2048, max: 2548 } },
    });
  });
});
