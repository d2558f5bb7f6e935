import path from 'node:path';
import { expect, openAddress, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

const pictures = path.join(import.meta.dirname, 'pictures');
/** Pictures are taken on purpose (`npm run pictures`), so that a test run changes no file of the project. */
const wanted = process.env['PICTURES'] === '1';

for (const scheme of ['light', 'dark'] as const) {
  test(`every view is drawn, ${scheme}`, async ({ app }) => {
    test.skip(!wanted, 'Pictures are taken on purpose: npm run pictures.');
    test.setTimeout(240_000);
    await app.emulateMedia({ colorScheme: scheme });
    const take = async (name: string): Promise<void> => {
      // Live figures go on moving; one moment of them is the picture.
      await app.waitForTimeout(1500);
      const bytes = await app.screenshot({ path: path.join(pictures, `${name}-${scheme}.png`) });
      expect(bytes.length).toBeGreaterThan(20_000);
    };
    await openAddress(app, '#/pad');
    await expect(app.getByText(/\d+ reports\/s/u).first()).toBeVisible();
    await take('pad');
    await app.getByRole('button', { name: /fitting aid/i }).click();
    await take('fitting');
    await app.keyboard.press('Escape');
    await openAddress(app, '#/survey?stick=left');
    await app.getByLabel('let the demonstration hand do it').check();
    await app.getByRole('button', { name: 'Start the survey' }).click();
    await expect(app.getByRole('img', { name: /^[3-9] of 24 releases taken/u })).toBeVisible({ timeout: 90_000 });
    await take('survey');
    await app.keyboard.press('Escape');
    await app.getByRole('button', { name: 'End and keep' }).click();
    await expect(app.getByRole('heading', { name: 'Survey ended early' })).toBeVisible();
    await app.getByRole('button', { name: 'Back to the surveys' }).click();
    await openLog(app, await makeDemoLog('off-centre'));
    await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 60_000 });
    await take('workbench');
    await app.getByRole('link', { name: 'Findings' }).click();
    await expect(app.getByRole('heading', { name: 'Verdict' })).toBeVisible();
    await take('findings');
  });
}
