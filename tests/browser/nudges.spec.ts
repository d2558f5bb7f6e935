import { readFile, writeFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { parseMappingFile } from '../../core/mapping/mapping-file.ts';
import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

let log = '';
let address = '';

test.beforeAll(async () => {
  test.setTimeout(120_000);
  log = await makeDemoLog('off-centre', '--stick', 'left');
  address = '';
});

/** Opens the survey in a window that has no "yours" of it yet, with its proposal there. */
async function open(app: Page): Promise<void> {
  if (address === '') {
    await openLog(app, log);
    address = new URL(app.url()).hash.replace(/direction=\d+&/u, '');
  } else await openAddress(app, address);
  await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
}

function mark(app: Page, name: string): Locator {
  return app.getByRole('slider', { name });
}

async function countOf(app: Page, name: string): Promise<number> {
  return Number(await mark(app, name).getAttribute('aria-valuenow'));
}

function ledgerRow(app: Page, name: RegExp): Locator {
  return app.getByRole('region', { name: 'Ledger' }).getByRole('row', { name });
}

test('arrow keys make yours of the proposed mapping, and every view draws it', async ({ app }) => {
  await open(app);
  const before = await countOf(app, 'x maximum');
  await mark(app, 'x maximum').press('ArrowLeft');
  await expect(mark(app, 'x maximum')).toHaveAttribute('aria-valuetext', `${String(before - 4)} counts, yours`);
  await mark(app, 'x maximum').press('Shift+ArrowLeft');
  await mark(app, 'x maximum').press('1');
  await mark(app, 'x maximum').press('ArrowRight');
  expect(await countOf(app, 'x maximum')).toBe(before - 19);
  await expect(ledgerRow(app, /^x maximum/u)).toContainText('−19');
  await expect(ledgerRow(app, /^least reach/u).getByRole('cell')).toHaveCount(4);
  await expect(app.getByRole('contentinfo')).toContainText(/yours \d\.\d{3}/u);
  await expect(app.getByRole('region', { name: 'Direction profile' })).toContainText('yours');
  await expect(app.getByRole('region', { name: 'Zone' })).toContainText('yours');
  await expectAccessible(app);
});

test('undo and redo go through every step, a reset too, by key and by button', async ({ app }) => {
  await open(app);
  const start = await countOf(app, 'y minimum');
  for (let step = 0; step < 5; step += 1) await mark(app, 'y minimum').press('ArrowRight');
  await mark(app, 'y minimum').press('n');
  await app.keyboard.press('Control+z');
  expect(await countOf(app, 'y minimum')).toBe(start + 20);
  for (let step = 0; step < 5; step += 1) await app.getByRole('button', { name: 'Undo' }).click();
  await expect(app.getByRole('button', { name: 'Undo' })).toBeDisabled();
  await expect(mark(app, 'y minimum')).toHaveAttribute('aria-valuetext', `${String(start)} counts, proposed`);
  await app.getByRole('button', { name: 'Redo' }).click();
  expect(await countOf(app, 'y minimum')).toBe(start + 4);
  await app.getByRole('button', { name: 'Reset all' }).click();
  expect(await countOf(app, 'y minimum')).toBe(start);
});

test('a drag is one step, the wheel moves a notch at a time', async ({ app }) => {
  await open(app);
  const start = await countOf(app, 'x minimum');
  const box = await mark(app, 'x minimum').boundingBox();
  if (box === null) throw new Error('The mark is not shown.');
  await app.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await app.mouse.down();
  for (const right of [5, 10, 20]) await app.mouse.move(box.x + box.width / 2 + right, box.y + box.height / 2);
  await app.mouse.up();
  const dragged = await countOf(app, 'x minimum');
  expect(dragged).toBeGreaterThan(start + 20);
  await mark(app, 'x minimum').hover();
  await app.mouse.wheel(0, -100);
  await expect.poll(() => countOf(app, 'x minimum')).toBe(dragged + 4);
  await app.keyboard.press('Control+z');
  await app.keyboard.press('Control+z');
  await expect.poll(() => countOf(app, 'x minimum')).toBe(start);
});

test('a number is typed; a bad one says why in place and the last good one stays', async ({ app }) => {
  await open(app);
  const field = app.getByRole('textbox', { name: 'x maximum, raw count' });
  await field.fill('3300');
  await field.press('Enter');
  expect(await countOf(app, 'x maximum')).toBe(3300);
  for (const [bad, why] of [
    ['many', 'Write a raw count'],
    ['5000', '0 to 4095'],
    ['100', 'not above x.centre'],
  ] as const) {
    await field.fill(bad);
    await field.press('Enter');
    await expect(app.getByRole('alert').filter({ hasText: why })).toBeVisible();
    await expect(field).toHaveAttribute('aria-invalid', 'true');
    expect(await countOf(app, 'x maximum')).toBe(3300);
  }
  await expectAccessible(app);
  await field.press('Escape');
  await expect(field).toHaveValue('3300');
});

test('one’s own step is 50 counts at first, and may be another', async ({ app }) => {
  await open(app);
  const start = await countOf(app, 'x centre');
  await mark(app, 'x centre').press('5');
  await mark(app, 'x centre').press('ArrowRight');
  expect(await countOf(app, 'x centre')).toBe(start + 50);
  await app.getByLabel(/^Own step/u).fill('7');
  await app.getByLabel(/^Own step/u).press('Enter');
  await mark(app, 'x centre').press('ArrowLeft');
  expect(await countOf(app, 'x centre')).toBe(start + 43);
});

test('a number of yours goes back to the proposed one or to now from the ledger', async ({ app }) => {
  await open(app);
  const start = await countOf(app, 'y maximum');
  await mark(app, 'y maximum').press('PageUp');
  await ledgerRow(app, /^y maximum/u)
    .getByRole('button', { name: 'proposed' })
    .click();
  expect(await countOf(app, 'y maximum')).toBe(start);
});

test('yours outlives another view and a reload, and can be undone after it', async ({ app }) => {
  await open(app);
  const start = await countOf(app, 'x maximum');
  await mark(app, 'x maximum').press('ArrowRight');
  await app.getByRole('link', { name: 'Findings' }).click();
  await app.getByRole('link', { name: 'Workbench' }).click();
  await expect.poll(() => countOf(app, 'x maximum'), { timeout: 120_000 }).toBe(start + 4);
  await app.reload();
  await expect(mark(app, 'x maximum')).toHaveAttribute('aria-valuenow', String(start + 4), { timeout: 120_000 });
  await app.getByRole('button', { name: 'Undo' }).click();
  await expect(mark(app, 'x maximum')).toHaveAttribute('aria-valuetext', /proposed|now/u);
});

test('yours is kept under a name, saved as a file, and both are taken again', async ({ app }, info) => {
  await open(app);
  const kept = app.getByRole('region', { name: 'Yours, kept' });
  await mark(app, 'x maximum').press('ArrowRight');
  const own = await countOf(app, 'x maximum');
  await kept.getByLabel('Name').fill('Soft spring');
  await kept.getByRole('button', { name: 'Keep' }).click();
  await expect(kept).toContainText('Kept as Soft spring.');
  const saving = app.waitForEvent('download');
  await kept.getByRole('button', { name: 'Save file' }).click();
  const file = await saving;
  expect(file.suggestedFilename()).toBe('soft-spring-mapping.json');
  const text = await readFile(await file.path(), 'utf8');
  const read = parseMappingFile(JSON.parse(text));
  expect(read.ok && read.value.name).toBe('Soft spring');
  await app.getByRole('button', { name: 'Reset all' }).click();
  await kept.getByRole('button', { name: 'Take', exact: true }).click();
  expect(await countOf(app, 'x maximum')).toBe(own);
  await app.getByRole('button', { name: 'Reset all' }).click();
  const place = info.outputPath('kept.json');
  await writeFile(place, text);
  await kept.getByLabel('Mapping file to take as yours').setInputFiles(place);
  await expect(kept).toContainText('kept.json is yours now');
  expect(await countOf(app, 'x maximum')).toBe(own);
  await writeFile(place, '{"kind":"something else"}');
  await kept.getByLabel('Mapping file to take as yours').setInputFiles(place);
  await expect(kept).toContainText('The mapping file');
  expect(await countOf(app, 'x maximum')).toBe(own);
  await kept.getByRole('button', { name: 'Forget' }).click();
  await expect(kept.getByLabel('Kept')).toContainText('nothing kept yet');
});
