import type { Page } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

let log = '';

test.beforeAll(async () => {
  test.setTimeout(120_000);
  log = await makeDemoLog('healthy', '--steps', 'rest,rim,inputs');
});

async function openChain(app: Page): Promise<void> {
  await openLog(app, log);
  // The settings keep the chain of a test before.
  const single = app.getByRole('button', { name: 'One zone again' });
  if (await single.isVisible()) await single.click();
  await expect(app.getByRole('heading', { name: 'Zone' })).toBeVisible();
  await app.getByRole('link', { name: 'Edit as a chain' }).click();
  await expect(app.getByRole('heading', { name: 'Signal path' })).toBeVisible();
}

for (const scheme of ['light', 'dark'] as const)
  test(`a chain is built by hand and every figure has its table, in ${scheme}`, async ({ app }) => {
    await app.emulateMedia({ colorScheme: scheme });
    await openChain(app);
    for (const kind of ['minimumOutput', 'exponent', 'sector']) {
      await app.getByLabel('Kind of stage to add').selectOption(kind);
      await app.getByRole('button', { name: /^Add (at|behind)/u }).click();
    }
    expect(new URL(app.url()).hash).toContain('stage=3');
    await expect(app.getByRole('region', { name: 'Stages' }).getByRole('listitem')).toHaveCount(4);
    await expectAccessible(app);
    await app.getByRole('button', { name: 'Signal path as table' }).click();
    await expect(app.getByRole('row', { name: /^4 zone by sectors/u })).toBeVisible();
    await app.getByRole('button', { name: 'Map of the plane as table' }).click();
    await expect(app.getByRole('row', { name: /^90°/u })).toBeVisible();
    await expectAccessible(app);
    await app.getByRole('button', { name: 'Stage 4 earlier' }).click();
    expect(new URL(app.url()).hash).toContain('stage=2');
  });

test('a bad number is told in place and changes nothing; undo and redo go through all of it', async ({ app }) => {
  await openChain(app);
  const inner = app.getByRole('textbox', { name: 'Stage 1 inner' });
  const answer = app.getByRole('row', { name: /^largest onset/u });
  const before = await answer.textContent();
  await inner.fill('150');
  await expect(app.getByText(/The last good value stays/u)).toBeVisible();
  expect(await answer.textContent()).toBe(before);
  await inner.fill('30');
  await expect(app.getByText(/The last good value stays/u)).toBeHidden();
  await expect(answer).not.toHaveText(before ?? '');
  await app.getByRole('button', { name: 'Undo' }).click();
  await expect(answer).toHaveText(before ?? '');
  await app.getByRole('button', { name: 'Redo' }).click();
  await expect(answer).not.toHaveText(before ?? '');
});

test('a pasted bad chain is refused by name and place; a good one is saved as it came', async ({ app }) => {
  await openChain(app);
  await app.getByRole('button', { name: 'Paste' }).click();
  const bad = { kind: 'stickwright-chain', version: 1, name: 'x', stages: [{ zone: 'radial', inner: 0.1 }, { zone: 'axial', inner: 0.5, outer: 0.2, rescale: true }], needs: null }; // prettier-ignore
  await app.getByLabel('Chain file as text').fill(JSON.stringify(bad));
  await app.getByRole('button', { name: 'Take this chain' }).click();
  await expect(app.getByText(/Stage 2 of the chain \(axial\)/u)).toBeVisible();
  const good = { ...bad, name: 'two zones', stages: [bad.stages[0], { zone: 'axial', inner: 0.05, outer: 1, rescale: true }] }; // prettier-ignore
  await app.getByLabel('Chain file as text').fill(JSON.stringify(good));
  await app.getByRole('button', { name: 'Take this chain' }).click();
  await expect(app.getByRole('region', { name: 'Stages' }).getByRole('listitem')).toHaveCount(2);
  const download = app.waitForEvent('download');
  await app.getByRole('button', { name: 'Save file' }).click();
  expect(JSON.parse(await readFile(await (await download).path(), 'utf8'))).toEqual(good);
});

test('the matrix says what each consumer makes of the sticks, and a cell opens the views that show why', async ({
  app,
}) => {
  await openLog(app, log);
  await app.getByRole('link', { name: 'Consumers' }).click();
  const matrix = app.getByRole('region', { name: 'Consumers and sticks' });
  const none = matrix.getByRole('row', { name: /^Browser gamepad interface/u });
  await expect(none.getByRole('button', { name: /leaks, up to/u }).first()).toBeVisible();
  await expect(none).toContainText('left: free at rest');
  await expectAccessible(app);
  const zones = app.getByRole('region', { name: 'Smallest driver zones' });
  await expect(zones.getByRole('row', { name: /^Browser gamepad interface/u })).toContainText('for what was seen');
  await none
    .getByRole('button', { name: /leaks, up to/u })
    .first()
    .click();
  await expect(app.getByRole('heading', { name: 'Signal path' })).toBeVisible();
  await expect(app.getByRole('textbox', { name: 'Name' })).toHaveValue(/^Browser gamepad interface/u);
});

test('a consumer is described, kept, and deleted', async ({ app }) => {
  await openLog(app, log);
  await app.getByRole('link', { name: 'Consumers' }).click();
  await app.getByRole('textbox', { name: 'Name' }).fill('Boat on the bench');
  await app.getByRole('button', { name: 'chain in force' }).first().click();
  await app.getByRole('button', { name: 'Save as yours' }).click();
  const row = app.getByRole('region', { name: 'Consumers and sticks' }).getByRole('row', { name: /^Boat on the bench/u }); // prettier-ignore
  await expect(row).toContainText('yours');
  await openAddress(app, '#/pad?stick=left');
  await app.goBack();
  await expect(row).toBeVisible();
  await row.getByRole('button', { name: 'Boat on the bench' }).click();
  await app.getByRole('button', { name: 'Delete' }).click();
  await expect(row).toBeHidden();
});

test('no sectors, letters, and ten thousand of them are told in place; the last good ones stay', async ({ app }) => {
  await openChain(app);
  await app.getByLabel('Kind of stage to add').selectOption('sector');
  await app.getByRole('button', { name: /^Add (at|behind)/u }).click();
  const rows = app.getByRole('textbox', { name: /^Stage 2 sectors/u });
  const good = await rows.inputValue();
  for (const count of ['0', '10000']) {
    await app.getByLabel('Stage 2 number of sectors').fill(count);
    await app.getByLabel('Stage 2 number of sectors').press('Enter');
    await expect(app.getByText(/The last good value stays/u)).toBeVisible();
  }
  await rows.fill('ten twenty');
  await expect(app.getByText(/The last good value stays/u)).toBeVisible();
  await rows.fill('30 20');
  await expect(app.getByText(/The last good value stays/u)).toBeVisible();
  await rows.fill(good);
  await expect(app.getByText(/The last good value stays/u)).toBeHidden();
  await app.getByLabel('Stage 2 number of sectors').fill('8');
  await app.getByLabel('Stage 2 number of sectors').press('Enter');
  await expect(rows).toHaveValue(Array(8).fill(good.split('\n')[0]).join('\n'));
  // The settings outlive this test.
  await app.getByRole('link', { name: 'Mapping', exact: true }).click();
  await app.getByRole('button', { name: 'One zone again' }).click();
});
