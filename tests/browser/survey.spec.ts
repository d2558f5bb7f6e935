import type { Page } from '@playwright/test';
import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { movedParts } from './support/still-boxes.ts';

async function startSurvey(app: Page, hand: boolean, steps: readonly string[] = ['rest', 'gate']): Promise<void> {
  await openAddress(app, '#/survey?stick=left');
  for (const step of ['rest', 'gate', 'travel', 'flicks', 'rumble'])
    await app.getByRole('checkbox', { name: step, exact: true }).setChecked(steps.includes(step));
  await app.getByRole('checkbox', { name: 'right', exact: true }).uncheck();
  if (steps.includes('rest')) await app.getByLabel('Releases asked for').fill('3');
  if (steps.includes('gate')) await app.getByLabel('Turns each way').fill('1');
  // More than is waited for: what is looked at must still be under way on a slow machine.
  if (steps.includes('travel')) await app.getByLabel('Sweeps each way').fill('10');
  if (steps.includes('flicks')) await app.getByLabel('Flicks each way').fill('10');
  await app.getByLabel('let the demonstration hand do it').setChecked(hand);
  await app.getByRole('button', { name: 'Start the survey' }).click();
  await expect(app.getByRole('region', { name: 'What to do now' })).toContainText('left stick');
}

async function endEarly(app: Page): Promise<void> {
  await app.keyboard.press('Escape');
  await app.getByRole('button', { name: 'End and keep' }).click();
  await expect(app.getByRole('heading', { name: 'Survey ended early' })).toBeVisible();
}

test('a whole survey by the demonstration hand ends in a summary that opens on the Workbench', async ({ app }) => {
  await startSurvey(app, true);
  await expect(app.getByRole('heading', { name: 'Survey finished' })).toBeVisible({ timeout: 120_000 });
  await expect(app.getByRole('row', { name: /^left 3/u })).toBeVisible({ timeout: 120_000 });
  await expectAccessible(app);
  await app.getByRole('button', { name: 'Open in Workbench' }).click();
  await expect(app.getByRole('heading', { name: 'Direction profile' })).toBeVisible({ timeout: 120_000 });
  expect(new URL(app.url()).hash).toContain('survey=');
});

test('releases and turns are shown as they are taken, and both screens are accessible', async ({ app }) => {
  await startSurvey(app, false);
  await app.getByRole('button', { name: 'Begin' }).click();
  await expect(app.getByText(/Push the left stick/u)).toBeVisible();
  await expect(app.getByRole('list', { name: 'Steps of one release' })).toContainText('dwelling');
  await expectAccessible(app);
  await app.keyboard.press('s');
  await app.getByRole('button', { name: 'Begin' }).click();
  await expect(app.getByRole('img', { name: '0 of 72 directions covered both ways' })).toBeVisible();
  await expect(app.getByText('Not covered:')).toBeVisible();
  await expectAccessible(app);
  await endEarly(app);
});

test('sweeps and flicks are shown as they are taken, by the demonstration hand, and nothing moves meanwhile', async ({
  app,
}) => {
  await startSurvey(app, true, ['travel', 'flicks']);
  await expect(app.getByRole('img', { name: /^sweep at \d+ %$/u })).toBeVisible();
  await expectAccessible(app);
  expect(await movedParts(app, 20)).toEqual([]);
  await expect(app.getByRole('img', { name: /^([2-9]|[1-3]\d) of 40 sweeps taken$/u })).toBeVisible({
    timeout: 120_000,
  });
  await app.keyboard.press('s');
  const steps = app.getByRole('listitem');
  await expect(steps.filter({ hasText: 'left stick, flicks' })).toContainText('now', { timeout: 120_000 });
  await expect(app.getByRole('row', { name: /^flicks taken [1-9]\d* of 10/u })).toBeVisible({ timeout: 120_000 });
  await expectAccessible(app);
  await app.keyboard.press('s');
  await expect(app.getByRole('heading', { name: 'Survey finished' })).toBeVisible({ timeout: 120_000 });
});

test('a disturbance says what is to be arranged, and can be skipped', async ({ app }) => {
  await startSurvey(app, false, ['rumble']);
  await expect(app.getByRole('region', { name: 'What to do now' })).toContainText('Start the rumble');
  await expect(app.getByRole('listitem').filter({ hasText: 'rest while it rumbles' })).toContainText('next');
  await expectAccessible(app);
  await app.getByRole('button', { name: 'Skip this step' }).click();
  await expect(app.getByRole('heading', { name: 'Survey finished' })).toBeVisible();
});

test('directions of the releases stand after the page was loaded anew', async ({ app, bench }) => {
  await startSurvey(app, true, ['rest']);
  await expect(app.getByRole('img', { name: '2 of 3 releases taken' })).toBeVisible({ timeout: 120_000 });
  const before = await app.locator('.ruler .tally').count();
  expect(before).toBe(2);
  await app.goto(await bench.newAddress());
  await openAddress(app, '#/survey?stick=left');
  await expect(app.locator('.ruler .tally').first()).toBeAttached();
  expect(await app.locator('.ruler .tally').count()).toBeGreaterThanOrEqual(before);
  await expect(app.getByRole('heading', { name: 'Survey finished' })).toBeVisible({ timeout: 120_000 });
});

test('waits for the word to begin, repeats, skips and ends by keyboard alone', async ({ app }) => {
  await startSurvey(app, false);
  await app.getByRole('region', { name: 'What to do now' }).click();
  await app.keyboard.press('Enter');
  await expect(app.getByRole('listitem').filter({ hasText: 'left stick, rest' })).toContainText('now');
  await app.keyboard.press('r');
  await expect(app.getByRole('img', { name: '0 of 3 releases taken' })).toBeVisible();
  await app.keyboard.press('s');
  await expect(app.getByRole('listitem').filter({ hasText: 'left stick, gate' })).toContainText('next');
  await app.keyboard.press('Escape');
  await expect(app.getByRole('button', { name: 'Go on measuring' })).toBeFocused();
  await app.keyboard.press('Escape');
  await expect(app.getByRole('dialog')).toHaveCount(0);
  await endEarly(app);
});

test('while a survey runs no other pad can be taken in hand', async ({ app }) => {
  await startSurvey(app, false);
  await expect(app.getByRole('combobox', { name: 'Pad in hand' })).toBeDisabled();
  await endEarly(app);
  await expect(app.getByRole('combobox', { name: 'Pad in hand' })).toBeEnabled();
});

test('a log goes out as it was recorded and comes in again', async ({ app }) => {
  await startSurvey(app, false);
  await endEarly(app);
  await app.getByRole('button', { name: 'Back to the surveys' }).click();
  const rows = app.getByRole('region', { name: 'List of surveys' }).getByRole('row');
  await expect(rows.nth(1)).toBeVisible();
  const before = await rows.count();
  const download = app.waitForEvent('download');
  await app
    .getByRole('button', { name: /^Export/u })
    .first()
    .click();
  const file = await (await download).path();
  await app.getByLabel('Report log to import').setInputFiles(file);
  await expect(rows).toHaveCount(before + 1);
});

test('a file that is no report log is refused in one sentence and changes nothing', async ({ app }) => {
  await startSurvey(app, false);
  await endEarly(app);
  await app.getByRole('button', { name: 'Back to the surveys' }).click();
  const rows = app.getByRole('region', { name: 'List of surveys' }).getByRole('row');
  await expect(rows.nth(1)).toBeVisible();
  const before = await rows.count();
  await app.getByLabel('Report log to import').setInputFiles({
    name: 'letter.txt',
    mimeType: 'text/plain',
    buffer: Buffer.from('Dear workshop,\n'),
  });
  await expect(app.getByRole('alert').filter({ hasText: /\w+.*\.$/u })).toBeVisible();
  expect(await rows.count()).toBe(before);
});
