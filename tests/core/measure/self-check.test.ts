import { describe, expect, it } from 'vitest';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import { judgeSelfCheck, type KnownStick } from '../../../core/measure/self-check.ts';
import { sensorFields } from '../../support/fields.ts';
import { makeSurveyTrack } from '../../support/make-survey-track.ts';

const rest = { x: 2050, y: 2040 };
const survey = makeSurveyTrack({ fields: sensorFields, rest, gate: 1200, releases: 12, turnsEachWay: 3 });
const known: KnownStick = {
  rest,
  gate: { right: 3250, up: 3240, left: 850, down: 840 },
  noise: { x: 1, y: 1 },
};

function failing(left: KnownStick, rateHz = 1000): string[] {
  return judgeSelfCheck({ left, right: known }, rateHz, measureTrack(survey, null))
    .filter(({ of, holds }) => !holds && of.startsWith('left') && !of.includes('noise'))
    .map(({ of }) => of);
}

describe('judgeSelfCheck', () => {
  it('holds where what was measured is true', () => {
    expect(failing(known)).toEqual([]);
  });

  it('names what is not true, and nothing else', () => {
    expect(failing({ ...known, rest: { x: 2053, y: 2040 } })).toEqual(['left stick, rest x']);
    expect(failing({ ...known, gate: { ...known.gate, up: 3255 } })).toEqual(['left stick, rest to gate up']);
    const bent = { ...known.gate, right: 3280, left: 880 };
    expect(failing({ ...known, gate: bent })).toContain('left stick, off a line x');
    const items = judgeSelfCheck({ left: known, right: known }, 900, measureTrack(survey, null));
    expect(items.find(({ of }) => of.startsWith('report rate'))?.holds).toBe(false);
  });

  it('does not hold for a stick that was not measured, or noise that is none', () => {
    const items = judgeSelfCheck({ left: known, right: known }, 1000, measureTrack(survey, null));
    const right = items.filter(({ of }) => of.startsWith('right'));
    expect(right).toHaveLength(10);
    for (const one of right) expect(one).toMatchObject({ measured: null, holds: false });
    expect(items.find(({ of }) => of === 'left stick, noise x')).toMatchObject({ holds: false });
  });
});
