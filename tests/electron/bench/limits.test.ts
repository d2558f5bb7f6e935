import { describe, expect, it } from 'vitest';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { limitsInForce, unusedLimits } from '../../../electron/bench/measure/limits-in-force.ts';
import { follow, makeBench, openFirst, surveyOf, valueOf, type TestBench } from './make-bench.ts';

async function limitOf(test: TestBench, survey: string, id: string): Promise<unknown> {
  const { report } = valueOf(await test.bench.handle('surveys.open', { survey }));
  const found = report.findings.find((finding) => finding.id === id && finding.stick === 'left');
  return found === undefined ? null : { limit: found.limit, from: found.limitFrom };
}

describe('limits of findings', () => {
  it('are the program’s own but for those that the workshop has set, which say so', () => {
    const set = limitsInForce({ offCentre: 0.02, limitOfANewerVersion: 3, overshoot: defaultLimits.overshoot.value });
    expect(set.offCentre).toMatchObject({ value: 0.02, unit: defaultLimits.offCentre.unit, from: 'workshop' });
    expect(set.offCentre.source).toBe('Set on this bench.');
    const overshoot = { ...defaultLimits.overshoot, setBy: 'settings' };
    expect({ ...set, offCentre: null }).toEqual({ ...defaultLimits, offCentre: null, overshoot });
  });

  it('take a file before the settings, and the settings before the program’s own', () => {
    const set = limitsInForce({ offCentre: 0.02, seat: 0.05 }, { offCentre: 0.07 });
    expect(set.offCentre).toMatchObject({ value: 0.07, setBy: 'file', source: 'Given by a limits file.' });
    expect(set.seat).toMatchObject({ value: 0.05, setBy: 'settings' });
    expect(set.turn).toMatchObject({ value: defaultLimits.turn.value, setBy: 'default' });
  });

  it('that cannot be are used by none and told, one sentence each', () => {
    const values = { releases: 5, uncovered: 90, seat: 2, ofANewerVersion: 1, offCentre: 0.02 };
    expect(limitsInForce(values)).toEqual(limitsInForce({ offCentre: 0.02 }));
    const said = unusedLimits(values);
    expect(said).toHaveLength(4);
    for (const id of ['releases', 'uncovered', 'seat', 'ofANewerVersion'])
      expect(said.filter((says) => says.includes(id) && says.startsWith('In the settings: '))).not.toEqual([]);
    expect(unusedLimits({ offCentre: 0.02 })).toEqual([]);
  });

  it('that are changed judge a kept survey anew the next time it is opened', async () => {
    const test = await makeBench();
    const pad = await openFirst(test);
    await follow(test, pad);
    const { survey } = valueOf(await test.bench.handle('survey.start', surveyOf(pad, { releases: 12, turns: 3 })));
    await test.until(() => test.states.at(-1)?.step === 'done');
    const { value, from } = defaultLimits.offCentre;
    expect(await limitOf(test, survey, 'off-centre-part')).toEqual({ limit: value, from });
    valueOf(await test.bench.handle('settings.write', { limits: { offCentre: 0.001 } }));
    expect(await limitOf(test, survey, 'off-centre-part')).toEqual({ limit: 0.001, from: 'workshop' });
    valueOf(await test.bench.handle('settings.write', { limits: {} }));
    expect(await limitOf(test, survey, 'off-centre-part')).toEqual({ limit: value, from });
  });
});
