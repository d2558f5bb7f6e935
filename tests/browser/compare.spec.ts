import type { Page } from '@playwright/test';
import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

function surveyShown(app: Page): string {
  return new URLSearchParams(new URL(app.url()).hash.split('?')[1]).get('survey') ?? '';
}

test('two surveys are compared in the same views, and only what is beyond repeatability is called a difference', async ({
  app,
}) => {
  await openLog(app, await makeDemoLog('off-centre', '--stick', 'left'));
  const before = surveyShown(app);
  await openLog(app, await makeDemoLog('healthy', '--stick', 'left'));
  await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
  await app.getByRole('combobox', { name: /^against/u }).selectOption(before);
  const compared = app.getByRole('region', { name: 'Compared' });
  await expect(compared).toContainText(/\d+ of 12 measures differ/u, { timeout: 120_000 });
  await expect(compared.getByRole('row', { name: /^rest x, counts/u })).toContainText('differs');
  await expect(app.getByRole('region', { name: 'Direction profile' })).toContainText('before');
  await expect(app.getByRole('contentinfo')).toContainText(/before \d\.\d{3}/u);
  await expectAccessible(app);
  const { hash } = new URL(app.url());
  expect(hash).toContain(`against=${before}`);
  await app.getByRole('combobox', { name: /^against/u }).selectOption('');
  await expect(compared).toBeHidden();
  expect(new URL(app.url()).hash).not.toContain('against');
  await openAddress(app, hash);
  await expect(compared).toContainText(/measures differ/u);
  await openAddress(app, hash.replace(`against=${before}`, 'against=not-there'));
  await expect(compared).toContainText('!');
});

test('two surveys of an unchanged stick are called the same', async ({ app }) => {
  await openLog(app, await makeDemoLog('healthy', '--stick', 'left', '--seed', '5'));
  const before = surveyShown(app);
  await openLog(app, await makeDemoLog('healthy', '--stick', 'left', '--seed', '6'));
  await app.getByRole('combobox', { name: /^against/u }).selectOption(before);
  const compared = app.getByRole('region', { name: 'Compared' });
  await expect(compared).toContainText(/of 12 measures/u, { timeout: 120_000 });
  await expect(compared.getByText('differs', { exact: true })).toHaveCount(0);
});
