import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { done, failed, type Result } from '../../../../core/result.ts';
import { readLogPiece } from '../../../../electron/bench/surveys/survey-export.ts';
import { SurveyImport } from '../../../../electron/bench/surveys/survey-import.ts';
import { KeptSurveys } from '../../../../electron/bench/surveys/kept-surveys.ts';
import { temporaryFolder } from '../../../support/temporary-folder.ts';
import { smallLog } from '../write-log.ts';

async function setUp(check: () => Result<unknown> = () => done(null)) {
  const folder = await temporaryFolder();
  const keptSurveys = new KeptSurveys(path.join(folder, 'surveys'));
  const incoming = path.join(folder, 'incoming');
  const imports = new SurveyImport(incoming, keptSurveys, () => Promise.resolve(check()));
  return { keptSurveys, imports, left: () => readdir(incoming) };
}

function piecesOf(text: string, size: number): string[] {
  const bytes = Buffer.from(text);
  return Array.from({ length: Math.ceil(bytes.length / size) }, (_, at) =>
    bytes.subarray(at * size, (at + 1) * size).toString('base64'),
  );
}

describe('import of a log', () => {
  it('takes pieces in order, though they are sent without waiting, and gives the same bytes out again', async () => {
    const { keptSurveys, imports, left } = await setUp();
    const pieces = piecesOf(smallLog(20_000), 100_000);
    const taken = await Promise.all(
      pieces.map((piece, at) =>
        imports.take({ upload: 'u', name: 'C:\\logs\\my pad.padlog', piece, last: at === pieces.length - 1 }),
      ),
    );
    expect(taken.slice(0, -1).every((one) => one.ok && one.value === null)).toBe(true);
    const survey = taken.at(-1);
    expect(survey).toMatchObject({ ok: true, value: { name: 'my pad', finished: true, product: 'Test pad' } });
    expect(await left()).toEqual([]);

    const handle = survey?.ok === true ? (survey.value?.survey ?? '') : '';
    const log = await keptSurveys.logOf(handle);
    let text = '';
    for (let from: number | null = 0; from !== null && log.ok;) {
      const piece = await readLogPiece(log.value, from);
      if (!piece.ok) throw new Error(piece.problem.says);
      text += Buffer.from(piece.value.piece, 'base64').toString();
      from = piece.value.next;
    }
    expect(text).toBe(smallLog(20_000));
  });

  it('gives out a log of exactly one piece without an end missing', async () => {
    const { keptSurveys, imports } = await setUp();
    const [base, note] = [smallLog(10), (text: string) => `["m",999999,"note",{"text":"${text}"}]\n`];
    const text = base + note('x'.repeat(393_216 - base.length - note('').length));
    expect(Buffer.byteLength(text)).toBe(393_216);
    const [piece = ''] = piecesOf(text, 400_000);
    const taken = await imports.take({ upload: 'u', name: 'n', piece, last: true });
    const log = await keptSurveys.logOf(taken.ok ? (taken.value?.survey ?? '') : '');
    const first = log.ok ? await readLogPiece(log.value, 0) : log;
    expect(first).toMatchObject({ ok: true, value: { next: 393_216 } });
    expect(log.ok && (await readLogPiece(log.value, 393_216))).toEqual({ ok: true, value: { piece: '', next: null } });
  });

  it.each([
    ['an empty file', '', 'log-empty'],
    ['another kind of file', '<html></html>', 'log-not-a-log'],
    ['a wrong version', smallLog(2).replace('"version":1', '"version":2'), null],
    ['half a header', smallLog(0).slice(0, 40), 'log-cut-in-header'],
  ])('refuses %s in one sentence and leaves nothing behind', async (_, text, code) => {
    const { keptSurveys, imports, left } = await setUp();
    const piece = Buffer.from(text).toString('base64');
    const taken = await imports.take({ upload: 'u', name: 'n', piece, last: true });
    expect(taken.ok).toBe(false);
    if (!taken.ok && code !== null) expect(taken.problem.code).toBe(code);
    expect(await keptSurveys.list()).toEqual([]);
    expect(await left()).toEqual([]);
  });

  it('keeps nothing of a log that does not stand the whole check', async () => {
    const { keptSurveys, imports, left } = await setUp(() =>
      failed('log-time', 'Line 3 goes back in time; repair it.'),
    );
    const piece = Buffer.from(smallLog()).toString('base64');
    expect(await imports.take({ upload: 'u', name: 'n', piece, last: true })).toMatchObject({
      ok: false,
      problem: { code: 'log-time' },
    });
    expect(await keptSurveys.list()).toEqual([]);
    expect(await left()).toEqual([]);
  });

  it('refuses a piece that is no base64, and a fifth log at once', async () => {
    const { imports } = await setUp();
    expect(await imports.take({ upload: 'bad', name: 'n', piece: '*', last: false })).toMatchObject({
      ok: false,
      problem: { code: 'import-damaged' },
    });
    for (const upload of ['a', 'b', 'c', 'd'])
      expect((await imports.take({ upload, name: 'n', piece: 'eA==', last: false })).ok).toBe(true);
    expect(await imports.take({ upload: 'e', name: 'n', piece: 'eA==', last: false })).toMatchObject({
      ok: false,
      problem: { code: 'import-busy' },
    });
    await imports.close();
  });
});
