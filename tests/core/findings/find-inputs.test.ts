import { describe, expect, it } from 'vitest';
import { findInputs } from '../../../core/findings/find-inputs.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { ButtonMeasure, InputsMeasure, TriggerMeasure } from '../../../core/measure/inputs-measure.ts';

const button = (usage: number, bounceMs: number | null, wish: Partial<ButtonMeasure> = {}): ButtonMeasure => ({
  usage,
  pressed: bounceMs !== null,
  released: bounceMs !== null,
  bounceMs,
  ...wish,
});

function find(buttons: InputsMeasure['buttons'], triggers: InputsMeasure['triggers'] = {}, captured = true) {
  return findInputs({ buttons, hat: null, triggers, clicks: {} }, 1000, captured, defaultLimits);
}

describe('findInputs', () => {
  it('decides the longest bounce by 5 ms, known to one interval of the reports', () => {
    expect([6.1, 5.9, 4.1, 3.9].map((bounce) => find([button(1, 0), button(2, bounce)])?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    expect(find([button(3, 4), button(2, 7), button(9, 1)])).toMatchObject({ value: 7, u95: 1, limit: 5 });
    expect(find([button(3, 4), button(2, 7)])?.says).toContain('Button 2 bounces for 7.0 ms at most');
  });

  it('fails a trigger that was pulled and ends below nine tenths of its field, in a capture alone', () => {
    const ending = (max: number, captured = true) =>
      find([button(1, 0)], { left: { min: 100, max, back: 100, fieldMinimum: 100, fieldMaximum: 1100 } }, captured)!;
    expect([999, 1000, 400, 399].map((max) => ending(max).decision)).toEqual(['fail', 'pass', 'fail', 'pass']);
    expect(ending(900).for).toEqual(['The left trigger ends at 900 of 1100.']);
    expect(ending(900, false).decision).toBe('pass');
  });

  it('fails a button that never came up, in a capture alone, and names what is down and what was not pressed', () => {
    const held = button(4, 0, { released: false });
    const found = find([button(1, 0), held, button(7, null)])!;
    expect(found).toMatchObject({ decision: 'fail', for: ['Button 4 was pressed and never came up.'] });
    expect(found.against).toEqual(['It may have been held on purpose to the end.', 'Not seen pressed: 7.']);
    const elsewhere = find([button(1, 0), held], {}, false)!;
    expect(elsewhere).toMatchObject({ decision: 'pass', for: [], against: ['Still down at the end: 4.'] });
    expect(elsewhere.says).toContain('1 of 2 buttons');
  });

  it('says whether reports come too far apart to show a bounce as long as the limit', () => {
    const says = (intervalUs: number) =>
      findInputs({ buttons: [button(1, 0)], hat: null, triggers: {}, clicks: {} }, intervalUs, true, defaultLimits)!;
    expect(says(4999).decision).toBe('pass');
    expect(says(5000).says).toContain('reports come 5.0 ms apart');
  });

  const trigger = (wish: Partial<TriggerMeasure>): TriggerMeasure => ({
    min: 100,
    max: 1100,
    back: 100,
    fieldMinimum: 100,
    fieldMaximum: 1100,
    ...wish,
  });

  it('fails a trigger that was pulled and hangs beyond a tenth of its field, in a capture alone', () => {
    const hanging = (wish: Partial<TriggerMeasure>, captured = true) =>
      find([button(1, 0)], { right: trigger(wish) }, captured)!;
    expect([200, 201].map((back) => hanging({ back }).decision)).toEqual(['pass', 'fail']);
    expect(hanging({ back: 201 }).for).toEqual(['The right trigger came back to 201 only, of 100 when it is let go.']);
    expect(hanging({ back: 201 }).says).toBe('The right trigger came back to 201 only, of 100 when it is let go.');
    expect(hanging({ back: 201 }).causes[0]).toBe('Dirt, a tired spring or a shell that pinches the trigger');
    expect(hanging({ back: 201 }, false).decision).toBe('pass');
    // Hardly touched: it was not pulled.
    expect(hanging({ max: 399, back: 390 }).decision).toBe('pass');
    expect(hanging({ max: 1000, back: 900 }).for).toHaveLength(1);
    expect(hanging({ max: 900, back: 900 }).for).toHaveLength(2);
  });

  it('cannot say of a trigger that never moved in a capture, and names it', () => {
    const still = { left: trigger({ max: 149, back: 100 }) };
    const found = find([button(1, 0)], still)!;
    expect(found).toMatchObject({ decision: 'cannot say', severity: 'note' });
    expect(found.says).toBe('The left trigger never moved: it was not pulled, or its reading is dead.');
    expect(found.next).toBe('Press it once more, slowly, and record the inputs again.');
    expect(find([button(1, 0)], { left: trigger({ max: 150 }) })?.decision).toBe('pass');
    expect(find([button(1, 0)], still, false)?.decision).toBe('pass');
    const both = { ...still, right: trigger({ min: 150, max: 160, back: 155 }) };
    expect(find([button(1, 0)], both)?.says).toContain('The left and the right trigger never moved');
    // A contact that bounces, and a trigger that hangs, fail all the same.
    expect(find([button(1, 12)], still)).toMatchObject({ decision: 'fail', value: 12 });
    expect(find([button(1, 0)], { ...still, right: trigger({ back: 700 }) })?.decision).toBe('fail');
  });
});
