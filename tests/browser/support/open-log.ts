/** Imports a report log through the survey view and opens it on the Workbench, as a person would. */
import { expect, type Page } from '@playwright/test';

export async function openLog(app: Page, file: string): Promise<void> {
  await app.evaluate(() => {
    location.hash = '#/survey?stick=left';
  });
  // The survey that was taken in is chosen; one that was chosen before has gone from the address.
  const chosen = (): string | null => new URLSearchParams(new URL(app.url()).hash.split('?')[1]).get('survey');
  await expect.poll(chosen).toBeNull();
  await app.getByLabel('Report log to import').setInputFiles(file);
  await expect.poll(chosen, { timeout: 120_000 }).not.toBeNull();
  const survey = chosen() ?? '';
  await app.evaluate((hash) => {
    location.hash = hash;
  }, `#/workbench?stick=left&survey=${survey}`);
  await expect(app.getByRole('heading', { name: 'Direction profile' })).toBeVisible({ timeout: 120_000 });
}
