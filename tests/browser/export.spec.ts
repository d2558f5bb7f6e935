import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expectAccessible } from './support/accessible.ts';
import { expect, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

test.describe.configure({ timeout: 120_000 });

async function saved(app: Page, figure: string, kind: string): Promise<Buffer> {
  const download = app.waitForEvent('download');
  await app.getByLabel(`Save ${figure}`, { exact: true }).selectOption(kind);
  return readFile(await (await download).path());
}

test('every figure of the Workbench leaves as a drawing, a picture and a table', async ({ app }) => {
  await openLog(app, await makeDemoLog('healthy', '--steps', 'rest,rim', '--stick', 'left'));
  await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 60_000 });
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
