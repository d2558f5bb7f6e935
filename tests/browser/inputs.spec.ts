import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { movedParts } from './support/still-boxes.ts';

test('the checklist names every control and what is missing of it, before anything was pressed', async ({ app }) => {
  await openAddress(app, '#/survey?stick=left');
  await app.getByRole('link', { name: 'Inputs checklist' }).click();
  expect(new URL(app.url()).hash).toContain('#/survey/inputs');
  const list = app.getByRole('region', { name: 'Controls and what is missing' });
  await expect(list.getByRole('row')).toHaveCount(27);
  await expect(list.getByRole('row', { name: /^hat up-left/u })).toContainText('press');
  await expect(list.getByRole('row', { name: /^left trigger/u })).toContainText('of 0 … 255');
  await expect(app.getByText('26 of 26 still missing')).toBeVisible();
  await expectAccessible(app);
});

test('the demonstration hand presses everything, hands-free, and the check ends by itself', async ({ app }) => {
  // High enough for every row: a list that follows the hand would scroll.
  await app.setViewportSize({ width: 1280, height: 1100 });
  await openAddress(app, '#/survey/inputs?stick=left');
  await app.getByRole('button', { name: 'Begin' }).click();
  await expect(app.getByText(/^Press and let go of every control once/u)).toBeVisible();
  await expect(app.getByText(/^1\d of 26 still missing$/u)).toBeVisible({ timeout: 120_000 });
  expect(await movedParts(app, 8)).toEqual([]);
  await expect(app.getByText('all 26 seen')).toBeVisible({ timeout: 120_000 });
  const row = app.getByRole('row', { name: /^left trigger/u });
  await expect(row).toContainText('0 … 255');
  await expect(row).toContainText('nothing');
  await expectAccessible(app);
  await app.getByRole('button', { name: 'Check again' }).click();
  await expect(app.getByRole('button', { name: 'End without the rest' })).toBeVisible();
  await app.getByRole('button', { name: 'End without the rest' }).click();
  await expect(app.getByText(/^Ended without \d+ of 26\.$/u)).toBeVisible();
});

test('a survey that is chosen shows the inputs it holds', async ({ app }) => {
  await openAddress(app, '#/survey/inputs?stick=left');
  await app.getByRole('button', { name: 'Begin' }).click();
  await expect(app.getByText('all 26 seen')).toBeVisible({ timeout: 120_000 });
  await openAddress(app, '#/survey/inputs?stick=left');
  await app.reload();
  await app.getByLabel('Survey shown').selectOption({ index: 1 });
  await expect(app.getByText(/^As the survey holds it:/u)).toBeVisible();
  await expect(app.getByRole('row', { name: /^left trigger/u })).toContainText('0 … 255');
  await expectAccessible(app);
});

test('the checklist is worked by keyboard alone', async ({ app }) => {
  await openAddress(app, '#/survey/inputs?stick=left');
  await app.getByLabel('let the demonstration hand do it').uncheck();
  await app.getByRole('button', { name: 'Begin' }).focus();
  await app.keyboard.press('Enter');
  await expect(app.getByRole('button', { name: 'End without the rest' })).toBeEnabled();
  await app.keyboard.press('Enter');
  await expect(app.getByText('Ended without 26 of 26.')).toBeVisible();
});
