import { describe, expect, it } from 'vitest';
import type { Turn } from '../../../../core/capture/evidence/evidence.ts';
import { TurnCounter } from '../../../../core/capture/evidence/turn-counter.ts';
import type { Pair } from '../../../../core/pad/stick.ts';
import { eightBits, HandScript, twelveBits, type StickPlan } from '../guide/hand-script.ts';

const rest = { x: 2048, y: 2048 };

function script(plan: Partial<StickPlan> = {}): HandScript {
  return new HandScript({ fields: twelveBits, rest, gate: () => 1500, noise: 2, ...plan });
}

function count(hand: HandScript, about: Pair = rest): { turns: Turn[]; counter: TurnCounter } {
  const { fields, t, x, y } = hand.stick;
  const counter = new TurnCounter(fields, about);
  t.forEach((at, i) => counter.reading(at, x[i] ?? 0, y[i] ?? 0));
  counter.end();
  return { turns: counter.turns, counter };
}

function ways(hand: HandScript): string {
  return count(hand)
    .turns.map(({ way }) => (way === 'clockwise' ? '-' : '+'))
    .join('');
}

function missing(turn: Turn | undefined): number {
  return turn?.points.filter((point) => point === null).length ?? 72;
}

describe('TurnCounter', () => {
  it('counts exactly as many turns as were made each way, from rest and back to it', () => {
    const hand = script()
      .stay(0.5)
      .push(20)
      .turn(3 * 360)
      .letGo()
      .stay(0.5)
      .push(200)
      .turn(-3 * 360)
      .letGo()
      .stay(0.5);
    expect(ways(hand)).toBe('+++---');
  });

  it('counts turns both ways without leaving the rim', () => {
    expect(
      ways(
        script()
          .push(0)
          .turn(3 * 360 + 20)
          .turn(-2 * 360 - 50)
          .letGo(),
      ),
    ).toBe('+++--');
  });

  it('does not count what is short of a turn', () => {
    expect(ways(script().push(0).turn(340).letGo())).toBe('');
    expect(
      ways(
        script()
          .push(0)
          .turn(360 + 340)
          .letGo(),
      ),
    ).toBe('+');
    expect(ways(script().push(0).turn(300).turn(-300).turn(300).letGo())).toBe('');
  });

  it('takes a turn that lacks less than one direction for a whole one', () => {
    const turned = (degrees: number): string => ways(script({ noise: 0 }).push(0).turn(degrees, 4).letGo());
    expect([turned(353), turned(357)]).toEqual(['', '+']);
    expect([turned(-353), turned(-357)]).toEqual(['', '-']);
  });

  it('takes a way back of 30° for a change of way, and less for the hand’s unrest', () => {
    const back = (degrees: number): string =>
      ways(script({ noise: 0 }).push(0).turn(300, 4).turn(-degrees, 4).turn(100, 4).letGo());
    expect([back(28), back(32)]).toEqual(['+', '']);
  });

  it('wants a tenth of the half range and half of the usual radius for a rim', () => {
    // A tenth of the half range of twelve bits is 205 counts.
    const small = (counts: number): string =>
      ways(
        script({ gate: () => counts, noise: 0 })
          .push(0)
          .turn(400, 4)
          .letGo(),
      );
    expect([small(200), small(210)]).toEqual(['', '+']);
    const dip = (share: number): string => {
      const slack = (turned: number): number => (turned > 500 && turned < 520 ? share : 1);
      return ways(script({ noise: 0 }).push(0).turn(800, 4, slack).letGo());
    };
    expect([dip(0.48), dip(0.52)]).toEqual(['+', '++']);
  });

  it('overlooks a hand that goes back a little', () => {
    const hand = script().push(0);
    for (let part = 0; part < 12; part += 1) hand.turn(50).turn(-15);
    expect(ways(hand.letGo())).toBe('+');
  });

  it('does not count a turn in which the stick left the rim', () => {
    expect(ways(script().push(0).turn(200).letGo().push(200).turn(200).letGo())).toBe('');
    const slack = (turned: number): number => (turned > 450 && turned < 500 ? 0.3 : 1);
    expect(ways(script().push(0).turn(820, 1.2, slack).letGo())).toBe('+');
  });

  it('does not count circles well within the gate once the gate is known', () => {
    const hand = script()
      .push(0, 0.3)
      .turn(720, 1.2, () => 0.3)
      .letGo()
      .push(0)
      .turn(720)
      .letGo();
    const { turns } = count(hand);
    expect(turns).toHaveLength(2);
    expect(
      Math.min(...turns.flatMap((turn) => turn.points.map((p) => Math.hypot(p?.x ?? 1e9, p?.y ?? 1e9)))),
    ).toBeGreaterThan(1400);
  });

  it('keeps the reading of largest radius in each direction, y up, in counts from the rest', () => {
    const gate = (degrees: number): number => 1500 + 200 * Math.cos((degrees * Math.PI) / 180);
    const { turns } = count(script({ gate, noise: 0 }).push(90).turn(370, 4).letGo());
    expect(turns).toHaveLength(1);
    turns[0]?.points.forEach((point, direction) => {
      const angle = direction * 5;
      expect(Math.hypot(point?.x ?? 0, point?.y ?? 0)).toBeGreaterThan(gate(angle) - 20);
      expect(Math.hypot(point?.x ?? 0, point?.y ?? 0)).toBeLessThan(gate(angle) + 20);
      const off = (Math.atan2(point?.y ?? 0, point?.x ?? 0) * 180) / Math.PI - angle;
      expect(Math.abs(((off + 540) % 360) - 180)).toBeLessThan(2.6);
    });
  });

  it('has the extremes of a turn in counts as reported', () => {
    const { turns } = count(script({ noise: 0 }).push(0).turn(720, 4).letGo());
    const { xMin, xMax, yMin, yMax } = turns[1]?.extremes ?? { xMin: 0, xMax: 0, yMin: 0, yMax: 0 };
    for (const extreme of [2048 - xMin, xMax - 2048, 2048 - yMin, yMax - 2048]) {
      expect(extreme).toBeGreaterThan(1497);
      expect(extreme).toBeLessThanOrEqual(1500);
    }
  });

  it('leaves a direction that a fast turn passed between two reports empty', () => {
    const { turns } = count(script({ intervalUs: 8000 }).push(0).turn(-1100, 0.4).letGo());
    expect(turns).toHaveLength(3);
    for (const turn of turns) expect(missing(turn)).toBeGreaterThan(10);
    const slow = count(script().push(0).turn(-1100, 2).letGo());
    for (const turn of slow.turns) expect(missing(turn)).toBe(0);
  });

  it('does not guess the way over a step of more than 90° between reports', () => {
    expect(ways(script({ intervalUs: 120_000 }).push(0).turn(1800, 0.4).letGo())).toBe('');
  });

  it('counts turns about a rest far from the middle of the gate', () => {
    const gate = (degrees: number): number => {
      const e = 450 * Math.cos((degrees * Math.PI) / 180);
      const f = 450 * Math.sin((degrees * Math.PI) / 180);
      return e + Math.sqrt(1500 ** 2 - f ** 2);
    };
    expect(ways(script({ gate }).push(180).turn(1080).letGo().push(180).turn(-1080).letGo())).toBe('+++---');
  });

  it('counts turns along a gate that clips at the limits of the field', () => {
    const hand = new HandScript({ fields: eightBits, rest: { x: 131, y: 128 }, gate: () => 145 });
    const counter = new TurnCounter(eightBits, { x: 131, y: 128 });
    hand
      .push(10)
      .turn(3 * 360 + 290)
      .letGo();
    for (const { t, x, y } of hand.readings) counter.reading(t, x, y);
    counter.end();
    expect(counter.turns).toHaveLength(3);
    expect(counter.turns[1]?.extremes).toEqual({ xMin: 0, xMax: 255, yMin: 0, yMax: 255 });
  });

  it('takes no reading from the way out to the gate for the gate', () => {
    const spiral = (turned: number): number => Math.min(1, 0.5 + turned / 60);
    const hand = script()
      .push(0, 0.5)
      .turn(3 * 360 + 40, 1.2, spiral)
      .letGo();
    const { turns } = count(hand);
    const radii = turns.flatMap((turn) => turn.points.flatMap((p) => (p === null ? [] : [Math.hypot(p.x, p.y)])));
    expect(turns.length).toBeGreaterThanOrEqual(2);
    expect(Math.min(...radii)).toBeGreaterThan(0.8 * 1500);
  });

  it('takes no reading where one turn slipped inwards and the others did not', () => {
    const slack = (turned: number): number => (turned > 400 && turned < 430 ? 0.7 : 1);
    const { turns } = count(
      script()
        .push(0)
        .turn(3 * 360 + 10, 1.2, slack)
        .letGo(),
    );
    expect(turns).toHaveLength(3);
    expect(turns.map(missing)).toEqual([0, expect.any(Number), 0]);
    expect(missing(turns[1])).toBeGreaterThanOrEqual(4);
    expect(missing(turns[1])).toBeLessThanOrEqual(7);
  });

  it('drops the last whole turn and the one under way', () => {
    const hand = script()
      .push(0)
      .turn(2 * 360 + 200);
    const { fields, t, x, y } = hand.stick;
    const counter = new TurnCounter(fields, rest);
    t.forEach((at, i) => counter.reading(at, x[i] ?? 0, y[i] ?? 0));
    expect(counter.tally).toEqual({ clockwise: 0, counterClockwise: 2 });
    expect(counter.underway).toBeGreaterThan(180);
    counter.dropLast();
    expect(counter.tally).toEqual({ clockwise: 0, counterClockwise: 1 });
    expect(counter.underway).toBe(0);
    counter.dropLast();
    counter.dropLast();
    expect(counter.turns).toEqual([]);
  });
});
