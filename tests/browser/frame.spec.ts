import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';

const VIEWS = [
  '#/pad?stick=left',
  '#/survey?stick=left',
  '#/survey/inputs?stick=left',
  '#/findings?stick=left',
  '#/workbench?stick=left',
  '#/pad/fitting?stick=left',
  '#/workbench/hosts?stick=left',
  '#/memory?stick=left',
  '#/memory/find?stick=left',
  '#/memory/kept?stick=left',
];

for (const scheme of ['light', 'dark'] as const) {
  test.describe(`in ${scheme}`, () => {
    test.use({ colorScheme: scheme });

    test('every view is accessible', async ({ app }) => {
      for (const address of VIEWS)
        await test.step(address, async () => {
          await openAddress(app, address);
          await expect(app.getByRole('main')).toBeVisible();
          await expectAccessible(app);
        });
    });
  });
}

for (const [width, height] of [
  [1280, 720],
  [1920, 1080],
  [3840, 2160],
] as const) {
  test(`nothing runs over the edge of a window of ${String(width)} by ${String(height)}`, async ({ app }) => {
    await app.setViewportSize({ width, height });
    for (const address of VIEWS) {
      await openAddress(app, address);
      await expect(app.getByRole('main')).toBeVisible();
      const over = (): Promise<unknown> =>
        app.evaluate(() => ({
          right: document.documentElement.scrollWidth - innerWidth,
          below: document.documentElement.scrollHeight - innerHeight,
        }));
      // A view may stand for a moment in the sizes of the one before it.
      await expect.poll(over, { message: address }).toEqual({ right: 0, below: 0 });
    }
  });
}

test('the selection stands in the address, and the address brings it back', async ({ app }) => {
  await openAddress(app, '#/survey?stick=right&direction=55');
  await expect(app.getByRole('radio', { name: 'right stick' })).toBeChecked();
  await expect(app.getByRole('contentinfo')).toContainText('direction 55° up-right');
  await app.getByRole('radio', { name: 'left stick' }).check();
  expect(new URL(app.url()).hash).toBe('#/survey?stick=left&direction=55');
  await app.reload();
  await expect(app.getByRole('heading', { name: 'New survey' })).toBeVisible();
  await expect(app.getByRole('contentinfo')).toContainText('left stick');
});

test('the browser’s Back returns to the view before', async ({ app }) => {
  await app.getByRole('link', { name: 'Survey' }).click();
  await expect(app.getByRole('heading', { name: 'New survey' })).toBeVisible();
  await app.goBack();
  await expect(app.getByRole('heading', { name: 'Axis rails' })).toBeVisible();
});

test('light or dark is kept by the bench', async ({ app, bench, page }) => {
  await app.getByRole('combobox', { name: 'Light or dark' }).selectOption('dark');
  await expect(app.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.goto(await bench.newAddress());
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.getByRole('combobox', { name: 'Light or dark' }).selectOption('system');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'light');
});

test('every view is reached by keyboard alone, with a focus that is seen', async ({ app }) => {
  const workbench = app.getByRole('link', { name: 'Workbench' });
  for (let step = 0; step < 20; step += 1) {
    await app.keyboard.press('Tab');
    if (await workbench.evaluate((link) => link === document.activeElement)) break;
  }
  await expect(workbench).toBeFocused();
  expect(await workbench.evaluate((link) => getComputedStyle(link).outlineStyle)).toBe('solid');
  await app.keyboard.press('Enter');
  await expect(workbench).toHaveAttribute('aria-current', 'page');
});

test('a page without a ticket is told how to come in', async ({ page, bench }) => {
  const address = new URL(await bench.newAddress());
  await page.goto(address.origin);
  await expect(page.getByRole('alert').filter({ hasText: 'not let in' })).toBeVisible();
});

test('many surveys scroll in their own panel, never the page', async ({ app }) => {
  test.setTimeout(240_000);
  await app.setViewportSize({ width: 1280, height: 720 });
  await openAddress(app, '#/survey?stick=left');
  const log = await makeDemoLog('healthy', '--stick', 'left', '--steps', 'rest', '--releases', '1');
  const rows = app.getByRole('region', { name: 'Surveys', exact: true }).getByRole('row');
  const before = await rows.count();
  for (let more = 1; more <= 16; more += 1) {
    await app.getByLabel('Report log to import').setInputFiles(log);
    await expect.poll(() => rows.count()).toBeGreaterThanOrEqual(before + more);
  }
  const below = await app.evaluate(() => document.documentElement.scrollHeight - innerHeight);
  expect(below).toBe(0);
});
