/** What a survey's gate is known from: offered, chosen, kept, taken back. */
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { follow, makeBench, openFirst, surveyOf, valueOf, type TestBench } from '../make-bench.ts';

async function survey(test: TestBench, pad: string, steps: readonly ('rest' | 'rim')[]): Promise<string> {
  const before = test.states.length;
  const wish = surveyOf(pad, { releases: 12, turns: 2, steps: [...steps] });
  const started = valueOf(await test.bench.handle('survey.start', wish));
  await test.until(() => test.states.length > before && test.states.at(-1)?.step === 'done');
  return started.survey;
}

async function opened(test: TestBench, one: string) {
  const { gates, report } = valueOf(await test.bench.handle('surveys.open', { survey: one }));
  const seat = report.findings.find(({ id, stick }) => id === 'seat-not-flat' && stick === 'left');
  return { gates, says: seat?.for ?? [], u95: seat?.u95 ?? Number.NaN };
}

const KNOWN = 'The waves of the gate are known from an earlier, sound part in this shell.';

describe('the gate of a kept survey', () => {
  it('is known from another one once that is chosen, until it is taken back', { timeout: 120_000 }, async () => {
    const test = await makeBench();
    const judged: string[] = [];
    test.bench.listen('survey.judged', ({ survey: one }) => judged.push(one));
    const pad = await openFirst(test);
    await follow(test, pad);
    const earlier = await survey(test, pad, ['rest', 'rim']);
    const restAlone = await survey(test, pad, ['rest']);
    const shown = await survey(test, pad, ['rest', 'rim']);
    const choose = (one: string | null, stick: 'left' | 'right' = 'left') =>
      test.bench.handle('gates.choose', {
        survey: shown,
        stick,
        choice: one === null ? null : { survey: one, from: 'earlier part' },
      });

    const offered = async (stick: 'left' | 'right') =>
      valueOf(await test.bench.handle('gates.offered', { survey: shown, stick }));
    expect(await offered('left')).toEqual([earlier]);
    expect(await offered('right')).toEqual([]);

    const alone = await opened(test, shown);
    expect(alone.gates).toEqual({});
    for (const [refused, code] of [
      [await choose(shown), 'gate-of-itself'],
      [await choose('not-there'), 'survey-unknown'],
      [await choose(restAlone), 'gate-untold'],
      [await choose(earlier, 'right'), 'gate-untold'],
    ] as const)
      expect(refused).toMatchObject({ ok: false, problem: { code } });
    expect(judged).toEqual([]);
    expect((await opened(test, shown)).gates).toEqual({});

    valueOf(await choose(earlier));
    expect(judged).toEqual([shown]);
    const known = await opened(test, shown);
    expect(known.gates).toEqual({ left: { survey: earlier, from: 'earlier part', problem: null } });
    expect(known.says).toContain(KNOWN);
    expect(known.u95).toBeLessThan(alone.u95);
    // Another survey is judged as ever, and so is the proposal's ground of this one.
    expect((await opened(test, earlier)).gates).toEqual({});

    valueOf(await choose(null));
    expect(await opened(test, shown)).toEqual(alone);

    valueOf(await choose(earlier));
    await rm(path.join(test.folder, 'surveys', earlier), { recursive: true });
    const gone = await opened(test, shown);
    expect(gone.gates.left?.problem).toMatchObject({ code: 'gate-survey-gone' });
    expect(gone.says).toEqual(alone.says);
  });

  it('is never that of another pad, and the last choice is the one that is kept', { timeout: 120_000 }, async () => {
    const test = await makeBench();
    const pad = await openFirst(test);
    const other = valueOf(await test.bench.handle('pads.plugDemo', { name: 'loose' })).pad;
    const surveys: string[] = [];
    for (const one of [pad, other, pad]) {
      valueOf(await test.bench.handle('pads.open', { pad: one }));
      await follow(test, one);
      surveys.push(await survey(test, one, ['rest', 'rim']));
    }
    const [earlier, foreign, shown] = surveys as [string, string, string];
    const choose = (choice: { survey: string; from: 'ring turned' } | null) =>
      test.bench.handle('gates.choose', { survey: shown, stick: 'left', choice });
    expect(valueOf(await test.bench.handle('gates.offered', { survey: shown, stick: 'left' }))).toEqual([earlier]);
    const refused = await choose({ survey: foreign, from: 'ring turned' });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'gate-of-other-pad' } });

    const answers = await Promise.all([choose({ survey: earlier, from: 'ring turned' }), choose(null)]);
    expect(answers.map(({ ok }) => ok)).toEqual([true, true]);
    expect((await opened(test, shown)).gates).toEqual({});
  });
});
