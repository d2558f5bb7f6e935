/** Imports a report log through the survey view and opens it on the Workbench, as a person would. */
import { expect, type Page } from '@playwright/test';

export async function openLog(app: Page, file: string): Promise<void> {
  await app.evaluate(() => {
    location.hash = '#/survey?stick=left';
  });
  const rows = app.getByRole('region', { name: 'List of surveys' }).getByRole('row');
  const before = (await rows.count()) === 0 ? 1 : await rows.count();
  await app.getByLabel('Report log to import').setInputFiles(file);
  await expect(rows).toHaveCount(before + 1, { timeout: 30_000 });
  const newest = await app.getByLabel('Survey shown').locator('option').nth(1).getAttribute('value');
  await app.evaluate((survey) => {
    location.hash = `#/workbench?stick=left&survey=${survey}`;
  }, newest ?? '');
  await expect(app.getByRole('heading', { name: 'Direction profile' })).toBeVisible({ timeout: 30_000 });
}
