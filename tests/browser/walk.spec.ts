/** The whole job on one pad while another is plugged in, with a reload in the middle: at each step it is asked whose numbers stand there. */
import type { Page } from '@playwright/test';
import { expect, openAddress, test as base } from './support/app.ts';
import { startBench, type RunningBench } from './support/running-bench.ts';

const test = base.extend<{ fresh: RunningBench }>({
  // Playwright reads what a fixture needs from this pattern.
  // eslint-disable-next-line no-empty-pattern
  fresh: async ({}, use) => {
    const bench = await startBench();
    await use(bench);
    await bench.stop();
  },
});

const OURS = 'stale-2';
const OTHER = 'healthy-1';

async function come(page: Page, bench: RunningBench, address: string): Promise<void> {
  await page.goto(await bench.newAddress());
  await expect(page.getByRole('navigation', { name: 'Views' })).toBeVisible();
  await openAddress(page, address);
}

/** Rest of the left stick, and its gate where turns are asked for, done by the demonstration hand. */
async function survey(page: Page, releases: number, turns: number): Promise<void> {
  await openAddress(page, '#/survey?stick=left');
  for (const step of ['rest', 'gate', 'travel', 'flicks'])
    await page
      .getByRole('checkbox', { name: step, exact: true })
      .setChecked(step === 'rest' || (step === 'gate' && turns > 0));
  await page.getByLabel('Releases asked for').fill(String(releases));
  if (turns > 0) await page.getByLabel('Turns each way').fill(String(turns));
  await page.getByRole('checkbox', { name: 'right', exact: true }).uncheck();
  await page.getByLabel('let the demonstration hand do it').check();
  await page.getByRole('button', { name: 'Start the survey' }).click();
  await expect(page.getByRole('region', { name: 'What to do now' })).toContainText(OURS);
}

async function surveyEnds(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { name: 'Survey finished' })).toBeVisible({ timeout: 240_000 });
}

function inHand(page: Page) {
  return page.getByRole('combobox', { name: 'Pad in hand' }).locator('option:checked');
}

function shown(page: Page) {
  return page.getByRole('combobox', { name: 'Survey shown' }).locator('option:checked');
}

test('take in, survey, findings, Workbench, Memory, write, survey again', async ({ page, fresh }) => {
  test.setTimeout(300_000);
  await come(page, fresh, '#/pad?stick=left');
  await expect(inHand(page)).toContainText(OTHER);
  await page.getByLabel('Simulated pad').selectOption('stale');
  await page.getByRole('button', { name: 'Plug in', exact: true }).click();
  await expect(inHand(page)).toContainText(OURS);

  await survey(page, 12, 2);
  await come(page, fresh, '#/survey?stick=left');
  await expect(inHand(page)).toContainText(OURS);
  await surveyEnds(page);
  await page.getByRole('link', { name: /^Findings/u }).click();
  await expect(shown(page)).toContainText(OURS);
  await expect(page.getByRole('region', { name: 'Verdict' })).toContainText('left stick', { timeout: 120_000 });

  await page.getByRole('link', { name: /^Workbench/u }).click();
  await expect(page.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
  await page.getByRole('radio', { name: 'even' }).check();
  const mark = page.getByRole('slider', { name: 'x maximum' });
  await expect(page.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
  await mark.press('ArrowLeft');
  const wanted = (await mark.getAttribute('aria-valuenow')) ?? 'none';

  // With the other pad in hand the survey is foreign: marked, and not to be planned.
  await page.getByRole('combobox', { name: 'Pad in hand' }).selectOption({ index: 0 });
  await expect(inHand(page)).toContainText(OTHER);
  await expect(page.getByText('other pad').first()).toBeVisible();
  await page.getByRole('link', { name: /^Memory/u }).click();
  await page.getByRole('button', { name: 'Read it from the pad' }).click();
  await expect(page.getByText('Read twice, equal, and kept.')).toBeVisible({ timeout: 120_000 });
  const plan = page.getByRole('region', { name: /^Plan$/u });
  await expect(plan.getByText(/^The survey is of another pad/u)).toContainText(OURS);
  await expect(plan.getByText(/^The survey is of another pad/u)).toContainText(OTHER);
  await expect(plan.getByRole('button', { name: 'Plan it' })).toBeDisabled();

  // Back to ours: what was chosen is what is planned, written and there.
  await page.getByRole('combobox', { name: 'Pad in hand' }).selectOption({ index: 1 });
  await expect(inHand(page)).toContainText(OURS);
  await page.getByRole('button', { name: 'Read it from the pad' }).click();
  await expect(plan.getByRole('button', { name: 'Plan it' })).toBeEnabled({ timeout: 120_000 });
  await plan.getByRole('button', { name: 'Plan it' }).click();
  await expect(plan.getByRole('row', { name: /left x\.max/u })).toContainText(wanted);
  const write = page.getByRole('region', { name: /^Write to the pad$/u });
  await expect(write).toContainText(OURS);
  await write.getByRole('checkbox', { name: /writing is on/iu }).check();
  await write.getByRole('button', { name: 'Show what would be written' }).click();
  const preview = page.getByRole('group', { name: 'What would be written' });
  const go = preview.getByRole('button', { name: 'Write this now' });
  await expect(go).toBeVisible();
  for (const box of await preview.getByRole('checkbox').all()) {
    await expect(go).toBeDisabled();
    await box.check();
  }
  await go.click();
  await expect(page.getByRole('heading', { name: 'A write broke off' })).toHaveCount(0);
  await expect(page.getByText(/Written, read back and compared/u)).toBeVisible({ timeout: 120_000 });
  await expect(page.getByRole('heading', { name: 'A write broke off' })).toHaveCount(0);
  const stored = page.getByRole('region', { name: /^Stored numbers$/u });
  await expect(stored.getByRole('row', { name: /^x max/u })).toContainText(wanted, { timeout: 120_000 });

  const asFound = await page.getByRole('combobox', { name: 'Survey shown' }).inputValue();
  // As left: the new survey is the one shown, and it is of the same pad.
  await openAddress(page, '#/survey?stick=left');
  await page.getByRole('button', { name: 'Back to the surveys' }).click();
  await survey(page, 3, 0);
  await surveyEnds(page);
  await page.getByRole('link', { name: /^Workbench/u }).click();
  await expect(shown(page)).toContainText(OURS);
  await expect(page.getByRole('combobox', { name: 'Survey shown' })).not.toHaveValue(asFound);
  await expect(page.getByText('other pad')).toHaveCount(0);
});
