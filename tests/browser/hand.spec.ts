import type { Page } from '@playwright/test';
import { expect, openAddress, test as base } from './support/app.ts';
import { startBench, type RunningBench } from './support/running-bench.ts';

/** What is in hand stays in hand, so each of these has a bench of its own. */
const test = base.extend<{ fresh: RunningBench; page: Page }>({
  // Playwright reads what a fixture needs from this pattern.
  // eslint-disable-next-line no-empty-pattern
  fresh: async ({}, use) => {
    const bench = await startBench();
    await use(bench);
    await bench.stop();
  },
});

const HEALTHY = 'Bench pad, healthy';

async function come(page: Page, bench: RunningBench, address = ''): Promise<void> {
  await page.goto(await bench.newAddress());
  await expect(page.getByRole('navigation', { name: 'Views' })).toBeVisible();
  if (address !== '') await openAddress(page, address);
}

async function plugIn(page: Page, name: string): Promise<void> {
  await page.getByLabel('Simulated pad').selectOption(name);
  await page.getByRole('button', { name: 'Plug in', exact: true }).click();
}

function hand(page: Page) {
  return page.getByRole('combobox', { name: 'Pad in hand' });
}

/** Begins a survey of the left stick's rest and lets the demonstration hand do it, or not. */
async function survey(page: Page, follows: boolean): Promise<void> {
  await openAddress(page, '#/survey?stick=left');
  for (const step of ['rest', 'gate', 'travel', 'flicks'])
    await page.getByRole('checkbox', { name: step, exact: true }).setChecked(step === 'rest');
  await page.getByRole('checkbox', { name: 'right', exact: true }).uncheck();
  await page.getByLabel('let the demonstration hand do it').setChecked(follows);
  await page.getByRole('button', { name: 'Start the survey' }).click();
  await expect(page.getByRole('region', { name: 'What to do now' })).toContainText('left stick');
}

async function endEarly(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'End and keep' }).click();
  await expect(page.getByRole('heading', { name: 'Survey ended early' })).toBeVisible();
}

test('two tabs show the same pad in hand, and what one takes the other shows', async ({ page, context, fresh }) => {
  await come(page, fresh);
  const other = await context.newPage();
  await come(other, fresh);
  await plugIn(page, 'worn');
  await expect(hand(page).locator('option:checked')).toContainText('worn-2');
  await expect(hand(other).locator('option:checked')).toContainText('worn-2');
  await hand(other).selectOption({ index: 0 });
  await expect(page.getByRole('region', { name: 'Pad in hand' })).toContainText('healthy-1');
  await page.reload();
  await come(page, fresh);
  await expect(page.getByRole('region', { name: 'Pad in hand' })).toContainText('healthy-1');
});

test('a survey of a pad that was not the first goes on through a reload and in a second tab', async ({
  page,
  context,
  fresh,
}) => {
  await come(page, fresh);
  await plugIn(page, 'worn');
  await expect(page.getByRole('region', { name: 'Pad in hand' })).toContainText('worn-2');
  await survey(page, true);
  const prompt = page.getByRole('region', { name: 'What to do now' });
  await expect(prompt).toContainText('worn-2');
  await come(page, fresh, '#/survey?stick=left');
  await expect(prompt).toContainText('worn-2');
  await expect(page.getByLabel('let the demonstration hand do it')).toBeChecked();
  await expect(hand(page).locator('option:checked')).toContainText('worn-2');
  await expect(hand(page)).toBeDisabled();
  const other = await context.newPage();
  await come(other, fresh, '#/survey?stick=left');
  await expect(other.getByRole('region', { name: 'What to do now' })).toContainText('worn-2');
  await endEarly(other);
  await expect(page.getByRole('heading', { name: 'Survey ended early' })).toBeVisible();
  await expect(hand(page).locator('option:checked')).toContainText('worn-2');
  await page.getByRole('button', { name: 'Back to the surveys' }).click();
  await expect(page.getByRole('region', { name: 'List of surveys' })).not.toContainText('other pad');
});

test('two equal pads are told apart in every list, and what is of the other is marked wherever it is shown', async ({
  page,
  fresh,
}) => {
  await come(page, fresh);
  await survey(page, false);
  await endEarly(page);
  await page.getByRole('button', { name: 'Back to the surveys' }).click();
  await openAddress(page, '#/pad?stick=left');
  await plugIn(page, 'healthy');
  await expect(page.getByRole('region', { name: 'Pad in hand' })).toContainText('healthy-2');
  const pads = page.getByRole('region', { name: 'Pads', exact: true });
  await expect(pads).toContainText(`${HEALTHY} healthy-1`);
  await expect(pads).toContainText(`${HEALTHY} healthy-2`);
  const options = await hand(page).locator('option').allInnerTexts();
  expect(options.filter((text) => text.includes('healthy-1'))).toHaveLength(1);
  expect(options.filter((text) => text.includes('healthy-2'))).toHaveLength(1);
  await expect(pads.getByRole('button', { name: `Take ${HEALTHY} · healthy-1 in hand` })).toBeVisible();

  await openAddress(page, '#/survey?stick=left');
  await expect(page.getByRole('region', { name: 'New survey' })).toContainText('healthy-2');
  const row = page.getByRole('region', { name: 'List of surveys' }).getByRole('row').nth(1);
  await expect(row).toContainText('healthy-1');
  await expect(row).toContainText('other pad');
  const shown = page.getByRole('combobox', { name: 'Survey shown' });
  await expect(shown.locator('option').nth(1)).toContainText('healthy-1');
  await openAddress(page, '#/findings?stick=left');
  await expect(page.getByRole('region', { name: 'Findings' })).toContainText('healthy-1');
  await shown.selectOption({ index: 1 });
  const views = [
    '#/findings',
    '#/workbench',
    '#/workbench/chain',
    '#/workbench/consumers',
    '#/workbench/hosts',
    '#/memory',
  ];
  const { hash } = new URL(page.url());
  const query = hash.slice(hash.indexOf('?'));
  for (const view of views) {
    await openAddress(page, `${view}${query}`);
    await expect(page.getByRole('banner'), view).toContainText('other pad');
    await expect(page.getByRole('contentinfo'), view).toContainText('other pad');
    await expect(page.getByRole('main'), view).toContainText('other pad');
  }
  await openAddress(page, '#/memory?stick=left');
  await expect(page.getByRole('region', { name: 'Write to the pad' })).toContainText('healthy-2');
  await openAddress(page, '#/pad/fitting?stick=left');
  await expect(page.getByRole('main')).toContainText('healthy-2');
});

test('a pad that is unplugged in a survey ends it with what was taken; plugged in again it streams', async ({
  page,
  context,
  fresh,
}) => {
  await come(page, fresh);
  await survey(page, true);
  await expect(page.getByRole('img', { name: /^2 of \d+ releases taken$/u })).toBeVisible({ timeout: 120_000 });
  const other = await context.newPage();
  await come(other, fresh);
  await other.getByRole('button', { name: 'Unplug' }).click();
  await expect(page.getByRole('heading', { name: 'Survey failed' })).toBeVisible();
  await expect(page.getByRole('status')).toContainText('healthy-1, broke off; what was taken is kept');
  await expect(page.getByRole('main')).toContainText('is no longer there; plug it in again');
  await expect(page.getByRole('row', { name: /^left [2-9]/u })).toBeVisible({ timeout: 120_000 });
  await expect(hand(other).locator('option:checked')).toContainText('(gone)');
  const identity = other.getByRole('region', { name: 'Pad in hand' });
  await expect(identity).toContainText('gone');
  await other.reload();
  await come(other, fresh);
  await expect(identity).toContainText('healthy-1, gone');
  await other.getByRole('button', { name: 'Plug in again' }).click();
  await expect(identity).toContainText('reports/s');
  await expect(identity).toContainText('healthy-1');
  await expect(hand(other).locator('option:checked')).not.toContainText('(gone)');
  await other.getByRole('button', { name: 'Take away' }).click();
  await expect(hand(other).locator('option:checked')).toContainText('no pad in hand');
  await expect(other.getByRole('region', { name: 'Pads', exact: true }).getByRole('listitem')).toHaveCount(0);
});
