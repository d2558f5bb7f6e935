import { describe, expect, it } from 'vitest';
import { findShortRange } from '../../../core/findings/find-short-range.ts';
import { lackOfReach } from '../../../core/findings/lack-of-reach.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { Subject } from '../../../core/findings/subject.ts';
import { HALF, makeSubject, REST } from './make-subject.ts';

const ends = { minimum: REST.x - HALF, maximum: REST.x + HALF };
const fields: Subject['fields'] = { x: { ...ends, up: 1 }, y: { ...ends, up: -1 } };

/** A pad that reports no more than full output; the gate stands 2 % beyond it but where `reach` cuts a side off. */
const pad = (reach: { right?: number; left?: number; up?: number; down?: number }, subject: Partial<Subject> = {}) =>
  makeSubject({
    radius: (degrees) => {
      const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const { right = 1, left = 1, up = 1, down = 1 } = reach;
      const x = Math.min(1.02, (c > 0 ? right : left) / Math.max(1e-9, Math.abs(c)));
      const y = Math.min(1.02, (s > 0 ? up : down) / Math.max(1e-9, Math.abs(s)));
      return Math.min(x, y);
    },
    subject: { domain: 'reported', fields, ...subject },
  });

describe('a side that lacks of full output', () => {
  it('is the one side that never comes to it, by what it lacks from the rest', () => {
    const found = lackOfReach(pad({ right: 0.94 }))!;
    expect(found).toMatchObject({ axis: 'x', side: 1 });
    expect(found.lack).toBeCloseTo(0.06, 3);
    expect(found.u95).toBeCloseTo(1 / HALF, 9);
    expect(lackOfReach(pad({ left: 0.94 }))).toMatchObject({ axis: 'x', side: -1 });
    expect(lackOfReach(pad({ up: 0.94 }))).toMatchObject({ axis: 'y', side: 1 });
    expect(lackOfReach(pad({ down: 0.94 }))).toMatchObject({ axis: 'y', side: -1 });
  });

  it('is none where all come to full output to a step, where two do not, and in sensor counts', () => {
    expect(lackOfReach(pad({}))).toBeNull();
    expect(lackOfReach(pad({ right: 1 - 1 / HALF }))).toBeNull();
    expect(lackOfReach(pad({ right: 0.94, up: 0.94 }))).toBeNull();
    expect(lackOfReach(pad({ right: 0.94 }, { domain: 'sensor' }))).toBeNull();
    expect(lackOfReach(makeSubject({ radius: null, subject: { domain: 'reported', fields } }))).toBeNull();
    expect(lackOfReach(makeSubject({ releases: 0, subject: { domain: 'reported', fields } }))).toBeNull();
  });

  it('is a short range beyond the limit, named with what would look the same', () => {
    const found = findShortRange(pad({ left: 0.94 }), defaultLimits)!;
    expect(found).toMatchObject({ id: 'short-range', decision: 'fail', severity: 'fault', limit: 0.012 });
    expect(found.says).toBe(
      'At the gate the left stick lacks 6.0 % ± 0.1 % of full output left, and comes to full output on all other sides: its range is short there.',
    );
    expect(found.against[0]).toContain('a stored edge beyond the gate would look the same');
    expect(found.shows.directions).toContain(180);
    expect(findShortRange(pad({ left: 0.99 }), defaultLimits)?.decision).not.toBe('fail');
  });
});
