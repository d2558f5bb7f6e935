import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

const EDGES = [
  ['minimum', 'min'],
  ['centre', 'centre'],
  ['maximum', 'max'],
] as const;
let log = '';
let foreign = '';

test.beforeAll(async () => {
  test.setTimeout(180_000);
  log = await makeDemoLog('healthy', '--steps', 'rest,rim');
  foreign = await makeDemoLog('off-centre', '--stick', 'left', '--steps', 'rest,rim');
});

/** The six numbers of the rails, by the names that a plan gives them. */
async function numbersOf(app: Page): Promise<Record<string, string>> {
  const numbers: Record<string, string> = {};
  for (const axis of ['x', 'y'])
    for (const [name, edge] of EDGES)
      numbers[`${axis}.${edge}`] =
        (await app.getByRole('slider', { name: `${axis} ${name}` }).getAttribute('aria-valuenow')) ?? '';
  return numbers;
}

async function readMemory(app: Page): Promise<void> {
  await app.getByRole('link', { name: /^Memory/u }).click();
  await app.getByRole('button', { name: 'Read it from the pad' }).click();
  await expect(app.getByText('Read twice, equal, and kept.')).toBeVisible({ timeout: 120_000 });
}

test('what was wished and nudged on the Workbench is what Memory plans, over a reload', async ({ app }) => {
  await openLog(app, log);
  await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
  const usual = await numbersOf(app);
  await app.getByLabel('Guard').fill('2');
  await app.getByRole('radio', { name: 'even' }).check();
  await app.getByRole('radio', { name: 'mean', exact: true }).check();
  await expect.poll(async () => (await numbersOf(app))['x.max'], { timeout: 120_000 }).not.toBe(usual['x.max']);
  await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
  await app.getByRole('slider', { name: 'y minimum' }).press('ArrowRight');
  const wanted = await numbersOf(app);

  await app.reload();
  await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
  await expect(app.getByRole('radio', { name: 'even' })).toBeChecked();
  await expect(app.getByLabel('Guard')).toHaveValue('2');
  expect(await numbersOf(app)).toEqual(wanted);

  await readMemory(app);
  const plan = app.getByRole('region', { name: /^Plan$/u });
  await expect(plan.getByRole('radio', { name: 'yours' })).toBeChecked();
  await expect(plan.getByText('Proposed as on the Workbench: even, mean centre.')).toBeVisible();
  // Another test may have written the user layer of this pad before.
  await plan.getByRole('radio', { name: 'factory', exact: true }).check();
  await expect(plan.getByText(/^! The factory layer is the fall-back/u)).toBeVisible();
  await plan.getByRole('button', { name: 'Plan it' }).click();
  await expect(plan.getByRole('row', { name: /^factory left/u }).first()).toBeVisible();
  const rows = await plan.getByRole('row', { name: /^factory left/u }).allTextContents();
  for (const [name, count] of Object.entries(wanted)) {
    const row = rows.find((text) => text.startsWith(`factory left ${name}`));
    if (row !== undefined) expect(row).toContain(`→ ${count}`);
  }
  expect(rows.some((text) => text.startsWith('factory left y.min'))).toBe(true);
  await expect(plan.getByRole('row', { name: /^factory right/u })).toHaveCount(0);
});

test('a plan begins with nothing where nothing asks for new numbers', async ({ app }) => {
  await openLog(app, log);
  await readMemory(app);
  const plan = app.getByRole('region', { name: /^Plan$/u });
  await expect(plan.getByText(/^Nothing asks for new numbers/u)).toBeVisible({ timeout: 120_000 });
  await expect(plan.getByRole('button', { name: 'Plan it' })).toBeDisabled();
  await plan.getByRole('checkbox', { name: 'right' }).check();
  await expect(plan.getByRole('button', { name: 'Plan it' })).toBeEnabled();
});

test('the survey of another pad cannot be planned: one sentence names both pads', async ({ app }) => {
  await openLog(app, foreign);
  await readMemory(app);
  const plan = app.getByRole('region', { name: /^Plan$/u });
  await expect(plan.getByText(/^The survey is of another pad \(.*\) than this memory \(.*\)/u)).toBeVisible();
  await expect(plan.getByRole('button', { name: 'Plan it' })).toBeDisabled();
});
