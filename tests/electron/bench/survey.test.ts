import { describe, expect, it } from 'vitest';
import { follow, makeBench, openFirst, surveyOf, valueOf } from './make-bench.ts';

describe('a survey on the bench', () => {
  it('takes rest and rim of both sticks from a hand that follows, and keeps them', async () => {
    const test = await makeBench();
    const pad = await openFirst(test);
    await follow(test, pad);
    const first = valueOf(
      await test.bench.handle('survey.start', surveyOf(pad, { sticks: ['left', 'right'], releases: 12, turns: 3 })),
    );
    expect(first).toMatchObject({ step: 'ready', stick: 'left', promptNumber: 1 });
    await test.until(() => test.states.at(-1)?.step === 'done' || test.clock.micros() > 4e9);
    console.log(test.clock.micros() / 1e6, test.states.length, JSON.stringify(test.states.at(-1)));
    const details = valueOf(await test.bench.handle('surveys.open', { survey: first.survey }));
    console.log(
      details.sticks.left?.evidence.rest?.dwells.length,
      details.sticks.left?.evidence.rim?.turns.map((t) => t.way),
      details.log,
    );
  }, 60000);
});
