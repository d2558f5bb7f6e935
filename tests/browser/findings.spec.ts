import type { Page } from '@playwright/test';
import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { cutBefore, makeDemoLog } from './support/demo-log.ts';
import { layoutShiftOver } from './support/layout-shift.ts';
import { openLog } from './support/open-log.ts';

let shortRange = '';
let restAlone = '';
let address = '';

test.beforeAll(async () => {
  test.setTimeout(120_000);
  shortRange = await makeDemoLog('short-range', '--stick', 'left');
  restAlone = await cutBefore(await makeDemoLog('healthy', '--stick', 'left'), '"purpose":"rim"');
  address = '';
});

/** Opens the findings of a pad whose range is short to the right; the bench has it from the first time on. */
async function openFindings(app: Page): Promise<void> {
  if (address === '') {
    await openLog(app, shortRange);
    address = new URL(app.url()).hash.replace('workbench', 'findings').replace(/&?direction=\d+/u, '');
  }
  await openAddress(app, address);
  await expect(app.getByRole('heading', { name: 'Verdict' })).toBeVisible({ timeout: 120_000 });
}

function finding(app: Page, name: string): ReturnType<Page['getByRole']> {
  return app.getByRole('article', { name });
}

test('without a survey it says what to do', async ({ app }) => {
  await openAddress(app, '#/findings?stick=left');
  await expect(app.getByRole('region', { name: 'Findings' }).getByText(/^No survey/u)).toBeVisible();
});

for (const scheme of ['light', 'dark'] as const) {
  test.describe(`in ${scheme}`, () => {
    test.use({ colorScheme: scheme });

    test('verdict, findings, folded checks, limits and the table twin are accessible', async ({ app }) => {
      await openFindings(app);
      await expectAccessible(app);
      await app.getByText(/held, \d+ checks$/u).click();
      await expectAccessible(app);
      await app.getByRole('button', { name: 'Findings as table' }).click();
      await expect(app.getByRole('table')).toHaveCount(2);
      await expectAccessible(app);
    });
  });
}

test('names the true cause first, with value, limit, causes and the next step', async ({ app }) => {
  await openFindings(app);
  await expect(app.getByRole('link', { name: /^left stick.*Reseat/u })).toBeVisible();
  const first = app.getByRole('article').first();
  await expect(first.getByRole('heading', { name: 'Short range' })).toBeVisible();
  await expect(first.getByRole('img', { name: /% of one side, limit at most [\d.]+.%: fails/u })).toBeVisible();
  await expect(first).toContainText('Likely causes');
  await expect(first).toContainText('Next');
  await expect(app.getByText(/held, \d+ checks$/u)).toBeVisible();
});

test('a click on a finding opens the Workbench with its directions marked, and Back returns', async ({ app }) => {
  await openFindings(app);
  await finding(app, 'Short range').getByRole('link').click();
  await expect(app.getByRole('note', { name: 'Marked finding' })).toContainText(
    /Short range.*Marked: directions \d+–\d+°/u,
  );
  expect(new URL(app.url()).hash).toMatch(/workbench\?.*direction=(?:0|3[0-5]\d|[1-4]?\d)&.*finding=short-range/u);
  await expect(app.getByRole('slider', { name: 'Direction' }).locator('line.evidence')).not.toHaveCount(0);
  await app.getByRole('button', { name: 'Direction profile as table' }).click();
  await expect(app.getByRole('row', { name: /^0° right covered, finding/u })).toBeVisible();
  await expectAccessible(app);
  await app.getByRole('button', { name: 'Unmark' }).click();
  await expect(app.getByRole('note', { name: 'Marked finding' })).toHaveCount(0);
  await app.goBack();
  await expect(finding(app, 'Short range')).toBeVisible();
});

test('by keyboard: a finding is reached, opened with Enter, and kept in the address', async ({ app }) => {
  await openFindings(app);
  const link = finding(app, 'Short range').getByRole('link');
  await app.getByRole('button', { name: 'Findings as table' }).focus();
  for (let step = 0; step < 4; step += 1) {
    await app.keyboard.press('Tab');
    if (await link.evaluate((one) => one === document.activeElement)) break;
  }
  await expect(link).toBeFocused();
  await app.keyboard.press('Enter');
  await expect(app.getByRole('note', { name: 'Marked finding' })).toBeVisible();
  await app.reload();
  await expect(app.getByRole('note', { name: 'Marked finding' })).toContainText('Short range', { timeout: 120_000 });
});

test('a limit that is made the workshop’s own judges anew, is marked, and is taken back', async ({ app }) => {
  await openFindings(app);
  const field = app.getByLabel('Limit of short range');
  const usual = await field.inputValue();
  await field.fill('no');
  await expect(app.getByRole('alert').filter({ hasText: 'Write a number' })).toBeVisible();
  await field.fill('30');
  await field.press('Enter');
  await expect(finding(app, 'Short range')).toHaveCount(0, { timeout: 120_000 });
  const back = app.getByRole('button', { name: /^short range: yours, back to [\d.]+/u });
  await expect(back).toBeVisible();
  await expectAccessible(app);
  await back.click();
  await expect(finding(app, 'Short range')).toBeVisible({ timeout: 120_000 });
  await expect(field).toHaveValue(usual);
});

test('a survey without a gate is undecided and says what is missing', async ({ app }) => {
  await openLog(app, restAlone);
  await app.getByRole('link', { name: 'Findings' }).click();
  await expect(app.getByRole('link', { name: /^left stick.*Undecided/u })).toBeVisible({ timeout: 120_000 });
  await expect(app.getByRole('list', { name: 'What is missing' })).toContainText('turn it slowly');
  await expectAccessible(app);
});

for (const [width, height] of [
  [1280, 720],
  [1920, 1080],
  [3840, 2160],
] as const) {
  test(`nothing moves by itself or runs over the edge at ${String(width)} by ${String(height)}`, async ({ app }) => {
    await app.setViewportSize({ width, height });
    await openFindings(app);
    expect(await layoutShiftOver(app, 1500)).toBeLessThan(0.0005);
    const over = await app.evaluate(() => ({
      right: document.documentElement.scrollWidth - innerWidth,
      below: document.documentElement.scrollHeight - innerHeight,
    }));
    expect(over).toEqual({ right: 0, below: 0 });
  });
}

test('a finding with samples shows them against time, each of its spans, with a table twin', async ({ app }) => {
  await openLog(app, await makeDemoLog('loose', '--stick', 'left'));
  await app.getByRole('link', { name: /^Findings/u }).click();
  await finding(app, 'Swings past its rest').getByRole('link').click();
  const strip = app.getByRole('region', { name: 'Strip' });
  await expect(strip.getByRole('slider', { name: 'Sample' })).toBeVisible({ timeout: 120_000 });
  await expect(strip).toContainText('1 of 8');
  await expectAccessible(app);
  await strip.getByRole('button', { name: 'Later' }).click();
  await expect(strip).toContainText('2 of 8');
  await app.screenshot({ path: test.info().outputPath('strip.png') });
  await strip.getByRole('button', { name: 'Strip as table' }).click();
  await expect(strip.getByRole('columnheader', { name: 'seconds of the log' })).toBeVisible();
});
