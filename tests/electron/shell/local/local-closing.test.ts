/** The built local shell is ended while a survey is under way: by each signal, by two of them, and by an error of its own. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { EventPayload, Reply } from '../../../../shared/contract.ts';
import { CLOSED } from '../../../../shared/socket.ts';
import { readLog } from '../../../support/read-log.ts';
import { surveyOf } from '../../bench/make-bench.ts';
import { askPage, enterRun } from './ask-page.ts';
import type { Page } from './open-shell.ts';
import { localRuns } from './run-local.ts';

const { folder, start } = localRuns();

type State = EventPayload<'survey.state'>;

function states(page: Page): State[] {
  return page.frames.flatMap((frame) => {
    const { name, payload } = frame as { name?: string; payload?: State };
    return name === 'survey.state' && payload !== undefined ? [payload] : [];
  });
}

/** A survey of the simulated pad whose hand follows, with rest points taken already. */
async function underway(page: Page): Promise<string> {
  const plug = await askPage<{ pad: string }>(page, 'pads.plugDemo', { name: 'healthy' });
  await askPage(page, 'pads.open', { pad: plug.pad });
  await askPage(page, 'demo.hand', { pad: plug.pad, stick: 'left', does: 'follow' });
  const begun = await askPage<State>(page, 'survey.start', surveyOf(plug.pad, { releases: 200 }));
  await page.until(() => states(page).some(({ rests }) => rests.length > 0));
  return begun.survey;
}

/** The log ends with the end of what was being taken, to the last letter, and the survey is there for the next program. */
async function expectKept(survey: string): Promise<void> {
  const { entries, cut } = await readLog(path.join(folder, 'surveys', survey, 'log.padlog'));
  expect(cut).toBe(false);
  expect(entries.at(-2)).toMatch(/capture \{"stick":"left","purpose":"rest","edge":"end"\}$/u);
  expect(entries.at(-1)).toMatch(/^mark \d+ end /u);
  const next = start();
  const listed = await askPage<Reply<'surveys.list'>>(await enterRun(next), 'surveys.list', {});
  expect(listed.map((one) => one.survey)).toContain(survey);
  next.child.kill('SIGTERM');
  await next.ended;
}

describe('the built local shell, ended amid a survey', () => {
  it.each(['SIGTERM', 'SIGHUP', 'SIGINT'] as const)('by %s closes in order', async (signal) => {
    const run = start();
    const page = await enterRun(run);
    const survey = await underway(page);
    run.child.kill(signal);
    expect(await run.ended).toMatchObject({ code: 0, stderr: '' });
    expect(await page.ended).toMatchObject({ code: CLOSED.goingAway });
    expect(states(page).at(-1)).toMatchObject({ survey, step: 'aborted' });
    await expectKept(survey);
  });

  it('by signals in a row closes in order all the same', async () => {
    const run = start();
    const page = await enterRun(run);
    const survey = await underway(page);
    for (const signal of ['SIGINT', 'SIGHUP', 'SIGTERM', 'SIGINT'] as const) run.child.kill(signal);
    const { code, stderr } = await run.ended;
    expect(code).toBe(0);
    expect(stderr).toMatch(/^(?:closing … [^\n]+\n)*$/u);
    await expectKept(survey);
  });

  it('by an error that nobody caught says and notes it, and closes in order', async () => {
    const run = start({ NODE_OPTIONS: `--import=${path.resolve('tests/electron/shell/local/throw-on-signal.mjs')}` });
    const page = await enterRun(run);
    const survey = await underway(page);
    run.child.kill('SIGUSR2');
    const { code, stderr } = await run.ended;
    expect(code).toBe(1);
    expect(stderr).toBe('The program met an error of its own (thrown by a test) and closes; start it again.\n');
    expect(await readFile(path.join(folder, 'faults.log'), 'utf8')).toMatch(/ local shell: Error: thrown by a test\n/u);
    await expectKept(survey);
  });
});
