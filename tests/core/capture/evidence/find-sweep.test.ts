import { describe, expect, it } from 'vitest';
import { findSweep } from '../../../../core/capture/evidence/find-sweep.ts';
import type { StickTrack } from '../../../../core/capture/evidence/track.ts';

/** A thousand counts to either side of the rest are the half range; y grows downwards. */
const fields = {
  x: { minimum: 0, maximum: 2000, up: 1 },
  y: { minimum: 0, maximum: 2000, up: -1 },
} as const;
const about = { x: 1000, y: 1000 };

/** Readings at shares of the half range along a line at an angle, y up. */
function along(degrees: number, shares: readonly number[]): StickTrack {
  const turn = (degrees * Math.PI) / 180;
  return {
    fields,
    t: Float64Array.from(shares, (_, i) => 1000 * i),
    x: Float64Array.from(shares, (share) => 1000 + 1000 * share * Math.cos(turn)),
    y: Float64Array.from(shares, (share) => 1000 - 1000 * share * Math.sin(turn)),
    buttonDown: new Uint8Array(shares.length),
  };
}

function line(from: number, to: number, steps = 20): number[] {
  return Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
}
const stay = (share: number, count = 5): number[] => Array<number>(count).fill(share);

function find(shares: readonly number[], degrees = 0, toward = degrees) {
  return findSweep(along(degrees, shares), { from: 0, to: shares.length }, about, toward);
}

describe('findSweep', () => {
  it('begins with the last reading at one gate and ends with the first at the other', () => {
    const shares = [...stay(-1), ...line(-0.9, 0.9), ...stay(1)];
    expect(find(shares)).toEqual({ toward: 0, along: 'x', from: 4, to: 27 });
    expect(find(shares, 90)).toEqual({ toward: 90, along: 'y', from: 4, to: 27 });
  });

  it('takes what lies within 2 % of the whole way from an end for the gate', () => {
    // The way is 2 long: to 0.04 from either end.
    const shares = [...stay(-1), ...stay(-0.97), ...line(-0.9, 0.9), ...stay(0.97), ...stay(1)];
    expect(find(shares)).toEqual({ toward: 0, along: 'x', from: 9, to: 32 });
    const slack = [...stay(-1), ...stay(-0.95), ...line(-0.9, 0.9), ...stay(0.95), ...stay(1)];
    expect(find(slack)).toEqual({ toward: 0, along: 'x', from: 4, to: 37 });
  });

  it('wants 15 % of the half range to either side of the rest', () => {
    expect(find([...stay(-0.16), ...line(-0.1, 0.9), ...stay(1)])).not.toBeNull();
    expect(find([...stay(-0.14), ...line(-0.1, 0.9), ...stay(1)])).toBeNull();
    expect(find([...stay(-1), ...line(-0.9, 0.1), ...stay(0.16)])).not.toBeNull();
    expect(find([...stay(-1), ...line(-0.9, 0.1), ...stay(0.14)])).toBeNull();
  });

  it('is the last way that goes with the prompt', () => {
    // To the far gate, back, there again and back once more.
    const way = [...stay(-1), ...line(-0.9, 0.9), ...stay(1), ...line(0.9, -0.9), ...stay(-1)];
    const shares = [...way, ...way];
    const found = find(shares)!;
    expect([shares[found.from], shares[found.to - 1]]).toEqual([-1, 1]);
    expect(found.from).toBeGreaterThan(way.length);
    // Prompted the other way, it is the last one back.
    const back = find(shares, 0, 180)!;
    expect([shares[back.from], shares[back.to - 1]]).toEqual([1, -1]);
    expect(back.from).toBeGreaterThan(found.from);
  });

  it('takes the last way of all where the motion lies more than 60° off the prompt', () => {
    const shares = [...stay(-1), ...line(-0.9, 0.9), ...stay(1), ...line(0.9, -0.9), ...stay(-1)];
    const ends = (degrees: number) => {
      const { from, to } = find(shares, degrees, 0)!;
      return [shares[from], shares[to - 1]];
    };
    expect(ends(59)).toEqual([-1, 1]);
    expect(ends(61)).toEqual([1, -1]);
  });

  it('is none of fewer than five readings, and looks at its own stretch alone', () => {
    expect(find([-1, -1, 1, 1])).toBeNull();
    const shares = [...stay(-1), ...line(-0.9, 0.9), ...stay(1), ...line(0.9, -0.9), ...stay(-1)];
    expect(findSweep(along(0, shares), { from: 26, to: shares.length }, about, 180)).toEqual({
      toward: 180,
      along: 'x',
      from: 30,
      to: 53,
    });
  });
});
