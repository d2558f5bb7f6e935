/** Ways along the gate that are no whole turn: what they count for, and what a log with nothing else is told to lack. */
import { describe, expect, it } from 'vitest';
import { gatherEvidence } from '../../../../core/capture/evidence/gather-evidence.ts';
import type { Turn } from '../../../../core/capture/evidence/evidence.ts';
import { TurnCounter } from '../../../../core/capture/evidence/turn-counter.ts';
import { HandScript, twelveBits } from '../guide/hand-script.ts';

const rest = { x: 2048, y: 2048 };
const script = (): HandScript =>
  new HandScript({ fields: twelveBits, rest, gate: () => 1500, noise: 1, intervalUs: 1000 });

function partsOf(hand: HandScript): Turn[] {
  const { fields, t, x, y } = hand.stick;
  const counter = new TurnCounter(fields, rest);
  t.forEach((at, i) => counter.reading(at, x[i] ?? 0, y[i] ?? 0));
  counter.end();
  return counter.parts;
}

const passed = ({ points }: Turn): number[] => points.flatMap((point, i) => (point === null ? [] : [5 * i]));
const range = (from: number, to: number): number[] =>
  Array.from({ length: (to - from) / 5 + 1 }, (_, i) => from + 5 * i);

describe('parts of turns', () => {
  it('count for the directions between their ends, those within 7.5° of either left out', () => {
    const [part, ...others] = partsOf(script().push(0).turn(250).letGo());
    expect(others).toEqual([]);
    expect(part!.way).toBe('counterClockwise');
    expect(passed(part!)).toEqual(range(10, 240));
    const [back] = partsOf(script().push(300).turn(-100).letGo());
    expect(back!.way).toBe('clockwise');
    expect(passed(back!)).toEqual(range(210, 290));
    const { x, y } = part!.points[18]!;
    // Somewhere within 2.5° of straight up, at the gate.
    expect(Math.abs(x)).toBeLessThan(1500 * Math.sin((2.6 * Math.PI) / 180));
    expect(Math.hypot(x, y)).toBeCloseTo(1500, -1);
  });

  it('are 30° long at least, and no whole turn', () => {
    expect(partsOf(script().push(0).turn(28).letGo())).toEqual([]);
    expect(partsOf(script().push(0).turn(33).letGo())).toHaveLength(1);
    expect(partsOf(script().push(0).turn(353).letGo())).toHaveLength(1);
    expect(partsOf(script().push(0).turn(358).letGo())).toEqual([]);
    expect(partsOf(script().push(0).turn(360).turn(90).letGo()).map(passed)).toEqual([range(10, 80)]);
  });

  it('begin anew where the way changes', () => {
    const parts = partsOf(script().push(0).turn(200).turn(-100).letGo());
    expect(parts.map(({ way }) => way)).toEqual(['counterClockwise', 'clockwise']);
    expect(parts.map(passed)).toEqual([range(10, 190), range(110, 190)]);
  });

  it('lack what lies inside of the gate', () => {
    const slack = (turned: number): number => (turned > 90 && turned < 120 ? 0.7 : 1);
    const hand = script().push(0).turn(720).letGo().push(0).turn(250, 1.2, slack).letGo();
    const [part] = partsOf(hand);
    for (const direction of [95, 100, 105, 110, 115]) expect(passed(part!)).not.toContain(direction);
    for (const direction of [60, 80, 130, 200]) expect(passed(part!)).toContain(direction);
  });
});

describe('a rim of parts', () => {
  function evidence(ways: readonly (readonly [from: number, degrees: number])[]) {
    const hand = script().stay(0.5).mark('capture', { purpose: 'rim', stick: 'left', edge: 'begin' });
    for (const [from, degrees] of ways) hand.push(from).turn(degrees).letGo().stay(0.3);
    return gatherEvidence(hand.mark('capture', { purpose: 'rim', stick: 'left', edge: 'end' }).track, 'left');
  }
  const codes = (ways: readonly (readonly [number, number])[]): string[] =>
    (evidence(ways).lacks ?? []).map(({ code }) => code).filter((code) => code !== 'no-release');

  it('stands where they pass three quarters of it together, and says that no turn is whole', () => {
    const { rim } = evidence([
      [0, 300],
      [0, -300],
    ]);
    expect(rim?.turns).toEqual([]);
    expect(rim?.parts?.map(({ way }) => way)).toEqual(['counterClockwise', 'clockwise']);
    expect(rim?.shape.circle?.radius).toBeCloseTo(1500, -1);
    expect(
      codes([
        [0, 300],
        [0, -300],
      ]),
    ).toEqual(['no-whole-turn']);
    // Two halves each way that meet.
    expect(
      codes([
        [0, 200],
        [180, 200],
      ]),
    ).toEqual(['no-whole-turn']);
  });

  it('is none where they pass less', () => {
    // 10° to 280° are 55 of 72 directions, 10° to 270° only 53.
    expect(evidence([[0, 290]]).rim).not.toBeNull();
    expect(evidence([[0, 275]]).rim).toBeNull();
    expect(codes([[0, 275]])).toEqual(['no-turn']);
  });

  it('says that all turns go one way, whole ones and those that pass most of the gate', () => {
    expect(codes([[0, 1100]])).toEqual(['turns-one-way']);
    expect(codes([[0, 300]])).toEqual(['turns-one-way']);
    const { lacks = [] } = evidence([[0, -1100]]);
    expect(lacks.find(({ code }) => code === 'turns-one-way')?.says).toBe(
      'All turns of the left stick go clockwise, so no direction is covered; turn it three times counter-clockwise, too.',
    );
    expect(
      codes([
        [0, 1100],
        [0, -1100],
      ]),
    ).toEqual([]);
    // A way back of 290° was meant for a turn, one of 100° was not.
    expect(
      codes([
        [0, 1100],
        [0, -290],
      ]),
    ).toEqual([]);
    expect(
      codes([
        [0, 1100],
        [0, -100],
      ]),
    ).toEqual(['turns-one-way']);
  });

  it('needs a whole turn where no mark says that the gate was meant', () => {
    const hand = script().stay(1).push(0).turn(330).letGo().stay(1);
    expect(gatherEvidence(hand.track, 'left').rim).toBeNull();
    const whole = script().stay(1).push(0).turn(400).letGo().stay(1).push(90).turn(-200).letGo().stay(1);
    const { rim } = gatherEvidence(whole.track, 'left');
    expect(rim?.turns).toHaveLength(1);
    // What is left of the 400°, and the way back.
    expect(rim?.parts?.map(({ way }) => way)).toEqual(['counterClockwise', 'clockwise']);
  });
});
