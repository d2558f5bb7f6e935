import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expectAccessible } from './support/accessible.ts';
import { expect, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

async function saved(app: Page, figure: string, kind: string): Promise<Buffer> {
  const download = app.waitForEvent('download');
  await app.getByLabel(`Save ${figure}`, { exact: true }).selectOption(kind);
  return readFile(await (await download).path());
}

test('every figure of the Workbench leaves as a drawing, a picture and a table', async ({ app }) => {
  await openLog(app, await makeDemoLog('healthy', '--steps', 'rest,rim', '--stick', 'left'));
  await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
  for (const figure of ['Direction profile', 'Plane', 'Axis rails', 'Response']) {
    const svg = (await saved(app, figure, 'svg')).toString('utf8');
    expect(svg).toContain(`<title>${figure}</title>`);
    expect(svg).not.toMatch(/class=|var\(--|<script/u);
  }
  // A browser stops a page that saves more than ten files without a click.
  for (const figure of ['Direction profile', 'Response']) {
    expect((await saved(app, figure, 'png')).subarray(1, 4).toString('latin1')).toBe('PNG');
    expect((await saved(app, figure, 'csv')).toString('utf8').split('\r\n').length).toBeGreaterThan(2);
  }
  await expectAccessible(app);
});

test('a table that stands by itself leaves as CSV, without the definitions that wait behind its words', async ({
  app,
}) => {
  await openLog(app, await makeDemoLog('off-centre'));
  await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
  const file = app.waitForEvent('download');
  await app.getByRole('button', { name: 'Ledger as CSV' }).click();
  const text = await readFile(await (await file).path(), 'utf8');
  const lines = text.trimEnd().split('\r\n');
  expect(lines[0]).toBe('measure,now,proposed,difference');
  expect(lines.find((line) => line.startsWith('least reach,'))).toMatch(
    /^least reach,0\.\d{3} at \d+°,1\.\d{3} at \d+°,\+0\.\d{3}$/u,
  );
  expect(lines.find((line) => line.startsWith('x centre,'))).toMatch(/^x centre,\d{4},\d{4},[+-]\d+$/u);
  await app.getByRole('link', { name: 'Consumers' }).click();
  const matrix = app.waitForEvent('download');
  await app.getByRole('button', { name: 'Consumers as CSV' }).click();
  expect(await readFile(await (await matrix).path(), 'utf8')).toMatch(/^consumer,left stick,right stick,triggers\r\n/u);
  await expectAccessible(app);
});
