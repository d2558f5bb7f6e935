import { mkdir, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseHeader } from '../../../../core/log/parse-header.ts';
import type { LogHeader } from '../../../../core/log/header.ts';
import { KeptSurveys } from '../../../../electron/bench/surveys/kept-surveys.ts';
import { temporaryFolder } from '../../../support/temporary-folder.ts';
import { smallLog } from '../write-log.ts';

function header(): LogHeader {
  const parsed = parseHeader(smallLog(0).trim());
  if (!parsed.ok) throw new Error(parsed.problem.says);
  return parsed.value;
}

async function withOne(): Promise<{ folder: string; keptSurveys: KeptSurveys; survey: string; log: string }> {
  const folder = path.join(await temporaryFolder(), 'surveys');
  const keptSurveys = new KeptSurveys(folder);
  const begun = await keptSurveys.begin(header());
  if (!begun.ok) throw new Error(begun.problem.says);
  await writeFile(begun.value.log, smallLog());
  return { folder, keptSurveys, ...begun.value };
}

describe('kept surveys', () => {
  it('is empty where there is no folder yet', async () => {
    expect(await new KeptSurveys(path.join(await temporaryFolder(), 'nowhere')).list()).toEqual([]);
  });

  it('finds a survey again after a restart, first open, then finished', async () => {
    const { folder, keptSurveys, survey } = await withOne();
    const summary = { survey, name: 'Test pad', stage: 'received', product: 'Test pad', simulated: false };
    expect(await new KeptSurveys(folder).list()).toEqual([expect.objectContaining({ ...summary, finished: false })]);
    expect(await keptSurveys.finish(survey)).toMatchObject({ ok: true });
    expect(await new KeptSurveys(folder).list()).toEqual([expect.objectContaining({ ...summary, finished: true })]);
  });

  it('lists from the log where the record is missing', async () => {
    const { folder, survey } = await withOne();
    await rm(path.join(folder, survey, 'survey.json'));
    expect(await new KeptSurveys(folder).list()).toEqual([expect.objectContaining({ survey, finished: false })]);
  });

  it('sets a broken record aside and never overwrites it', async () => {
    const { folder, keptSurveys, survey } = await withOne();
    await writeFile(path.join(folder, survey, 'survey.json'), '{"kind":');
    expect(await keptSurveys.list()).toEqual([expect.objectContaining({ survey })]);
    await keptSurveys.finish(survey);
    const aside = (await readdir(path.join(folder, survey))).filter((name) => name.endsWith('.set-aside'));
    expect(aside).toHaveLength(1);
    expect(await readFile(path.join(folder, survey, aside[0]!), 'utf8')).toBe('{"kind":');
  });

  it('leaves folders alone that are none of its own', async () => {
    const { folder, keptSurveys, survey } = await withOne();
    await mkdir(path.join(folder, 'Not Ours'));
    await mkdir(path.join(folder, 'empty'));
    expect((await keptSurveys.list()).map((one) => one.survey)).toEqual([survey]);
    expect((await readdir(folder)).toSorted()).toEqual(['Not Ours', survey, 'empty'].toSorted());
  });

  it.each(['../outside', '..', '/etc', 'a/b', '', 'x'.repeat(65), 'Große', 'nothing-here'])(
    'answers for no survey called %j',
    async (name) => {
      const { keptSurveys } = await withOne();
      expect(await keptSurveys.logOf(name)).toMatchObject({ ok: false, problem: { code: 'survey-unknown' } });
    },
  );

  it('says that a disk takes nothing', async () => {
    const folder = path.join(await temporaryFolder(), 'file');
    await writeFile(folder, 'in the way');
    const begun = await new KeptSurveys(folder).begin(header());
    expect(begun.ok).toBe(false);
  });
});
