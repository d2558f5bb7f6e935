import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { parseMappingFile } from '../../core/mapping/mapping-file.ts';
import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { cutBefore, makeDemoLog } from './support/demo-log.ts';
import { layoutShiftOver } from './support/layout-shift.ts';
import { openLog } from './support/open-log.ts';

let wholeLog = '';
let restAlone = '';
let oneRelease = '';
let wholeAddress = '';

test.beforeAll(async () => {
  test.setTimeout(120_000);
  wholeLog = await makeDemoLog('off-centre', '--stick', 'left');
  restAlone = await cutBefore(wholeLog, '"purpose":"rim"');
  wholeAddress = '';
  oneRelease = await makeDemoLog('short-range', '--stick', 'left', '--releases', '1', '--turns', '1');
});

/** Opens the whole survey and waits for its proposal; the bench has it from the first time on. */
async function openWhole(app: Page): Promise<void> {
  if (wholeAddress === '') {
    await openLog(app, wholeLog);
    wholeAddress = new URL(app.url()).hash.replace(/direction=\d+&/u, '');
  } else await openAddress(app, wholeAddress);
  await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
}

function ledgerRow(app: Page, name: RegExp): ReturnType<Page['getByRole']> {
  return app.getByRole('region', { name: 'Ledger' }).getByRole('row', { name });
}

/** Where every panel stands but the last, which grows with its sentences. */
async function panelPlaces(app: Page): Promise<unknown[]> {
  const panels = app.getByRole('main').getByRole('region');
  return panels.evaluateAll((all) =>
    all
      .filter((panel) => panel.querySelector('h2') !== null && panel.querySelector('dl') === null)
      .map((panel) => panel.getBoundingClientRect().toJSON() as unknown),
  );
}

test('without a survey it says what to do, with the way there', async ({ app }) => {
  await openAddress(app, '#/workbench?stick=left');
  await expect(app.getByText(/^No survey/u)).toBeVisible();
  await app
    .getByRole('region', { name: 'Workbench' })
    .getByRole('link', { name: /survey|one/u })
    .first()
    .click();
  await expect(app.getByRole('heading', { name: 'New survey' })).toBeVisible();
});

for (const scheme of ['light', 'dark'] as const) {
  test.describe(`in ${scheme}`, () => {
    test.use({ colorScheme: scheme });

    test('every figure and its table twin is accessible', async ({ app }) => {
      await openWhole(app);
      await expectAccessible(app);
      for (const name of ['Direction profile', 'Plane', 'Axis rails', 'Response'])
        await app.getByRole('button', { name: `${name} as table` }).click();
      await expect(app.getByRole('table')).toHaveCount(7);
      await expectAccessible(app);
    });
  });
}

test('compares the mapping of now with the proposed one, number by number', async ({ app }) => {
  await openWhole(app);
  await expect(ledgerRow(app, /^least reach/u)).toContainText(/0\.\d{3}.*1\.01\d/u);
  await expect(ledgerRow(app, /^leaks, of 24/u)).toContainText('≤');
  await app.getByRole('button', { name: 'Why these numbers' }).click();
  await expect(app.getByRole('region', { name: 'Why these numbers' }).getByText('x maximum')).toBeInViewport();
});

test('a word of the ledger is defined on focus', async ({ app }) => {
  await openWhole(app);
  await ledgerRow(app, /^rest offset/u)
    .getByRole('button')
    .focus();
  await app.keyboard.press('Shift+Tab');
  await app.keyboard.press('Tab');
  await expect(app.getByRole('tooltip').filter({ hasText: 'expanded uncertainty' })).toBeVisible();
});

test('arrow keys select a direction everywhere', async ({ app }) => {
  await openWhole(app);
  const slider = app.getByRole('slider', { name: 'Direction' });
  await slider.focus();
  await app.keyboard.press('Home');
  for (let step = 0; step < 11; step += 1) await app.keyboard.press('ArrowRight');
  await expect(slider).toHaveAttribute('aria-valuetext', /^55° up-right, reach now [\d.]+ · proposed [\d.]+, onset/u);
  expect(new URL(app.url()).hash).toContain('direction=55');
  await expect(app.getByRole('contentinfo')).toContainText('direction 55° up-right');
  await expect(app.getByRole('img', { name: /push toward 55° up-right/u })).toBeVisible();
  await expect(app.getByRole('img', { name: /direction 55° up-right is shown/u })).toBeVisible();
});

test('pointing shows a direction, leaving shows the selected one again, a click selects', async ({ app }) => {
  await openWhole(app);
  const slider = app.getByRole('slider', { name: 'Direction' });
  await slider.press('Home');
  const box = await slider.boundingBox();
  if (box === null) throw new Error('The profile is not shown.');
  await app.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await expect(app.getByRole('contentinfo')).toContainText(/pointing at \d+°/u);
  await app.mouse.move(box.x + box.width / 2, box.y - 60);
  await expect(app.getByRole('contentinfo')).not.toContainText('pointing at');
  await expect(slider).toHaveAttribute('aria-valuenow', '0');
  await app.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await expect(slider).not.toHaveAttribute('aria-valuenow', '0');
});

test('the plane points at the direction under the pointer', async ({ app }) => {
  await openWhole(app);
  const plane = app.getByRole('img', { name: /^Gate and rest/u });
  const box = await plane.boundingBox();
  if (box === null) throw new Error('The plane is not shown.');
  await app.mouse.click(box.x + box.height * 0.65, box.y + 20);
  await expect(app.getByRole('contentinfo')).toContainText(/direction \d+° up/u);
});

test('a bad zone is told in place while the last good one stays in force', async ({ app }) => {
  await openWhole(app);
  const zone = app.getByRole('region', { name: 'Zone' });
  await zone.getByRole('radio', { name: 'radial, cut', exact: true }).check();
  await zone.getByLabel('Inner').fill('12');
  const answers = await zone.getByText(/hidden|leaks/u).allTextContents();
  await zone.getByLabel('Inner').fill('twelve');
  await expect(zone.getByRole('alert')).toContainText('Write a number of per cent');
  await expect(zone.getByLabel('Inner')).toHaveAttribute('aria-invalid', 'true');
  expect(await zone.getByText(/hidden|leaks/u).allTextContents()).toEqual(answers);
  await zone.getByLabel('Inner').fill('0');
  await expect(zone.getByText(/leaks in 24 of 24/u).first()).toBeVisible();
});

test('the zone is kept by the bench', async ({ app }) => {
  await openWhole(app);
  const zone = app.getByRole('region', { name: 'Zone' });
  await zone.getByRole('radio', { name: 'scaled radial' }).check();
  await zone.getByLabel('Inner').fill('11');
  await zone.getByLabel('Inner').press('Enter');
  await app.reload();
  await expect(zone.getByLabel('Inner')).toHaveValue('11', { timeout: 120_000 });
  await expect(zone.getByRole('radio', { name: 'scaled radial' })).toBeChecked();
});

test('another aim gives another proposal', async ({ app }) => {
  await openWhole(app);
  const least = ledgerRow(app, /^least reach/u)
    .getByRole('cell')
    .last();
  const before = await least.textContent();
  await app.getByRole('radio', { name: 'edges' }).check();
  await expect(least).not.toHaveText(before ?? '', { timeout: 120_000 });
  await expect(app.getByLabel('Guard')).toBeDisabled();
});

test('the mapping file that is saved is one the program reads', async ({ app }) => {
  await openWhole(app);
  const saving = app.waitForEvent('download');
  await app.getByRole('button', { name: 'Save mapping file' }).click();
  const file = await saving;
  expect(file.suggestedFilename()).toMatch(/^[a-z0-9-]+-mapping\.json$/u);
  const read = parseMappingFile(JSON.parse(await readFile(await file.path(), 'utf8')));
  expect(read.ok).toBe(true);
});

test('the numbers can be copied', async ({ app, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openWhole(app);
  await app.getByRole('button', { name: 'Copy numbers' }).click();
  await expect(app.getByText('Numbers copied.')).toBeVisible();
  const text = await app.evaluate(() => navigator.clipboard.readText());
  expect(text).toMatch(/\nleast reach\t0\.\d{3} at \d+°\t1\.\d{3} at \d+°\t\+0\.\d{3}\n/u);
});

test('a survey without a rim says so and shows what its rest tells', async ({ app }) => {
  await openLog(app, restAlone);
  await expect(app.getByText(/No (whole )?turn of the left stick along its gate/u)).toBeVisible();
  await expect(ledgerRow(app, /^least reach/u)).toContainText('—');
  await expect(ledgerRow(app, /^leaks, of 24/u)).not.toContainText('—');
  await expectAccessible(app);
});

test('a stick with one release says what cannot be stated', async ({ app }) => {
  await openLog(app, oneRelease);
  await expect(app.getByText('One release only')).toBeVisible();
  await expect(ledgerRow(app, /^tolerance radius/u)).toContainText('—');
});

for (const [width, height] of [
  [1280, 720],
  [1920, 1080],
  [3840, 2160],
] as const) {
  test(`nothing moves by itself or runs over the edge at ${String(width)} by ${String(height)}`, async ({ app }) => {
    await app.setViewportSize({ width, height });
    await openWhole(app);
    // Figures are drawn a frame each: what is looked for is movement after that.
    await app.waitForTimeout(800);
    const shift = layoutShiftOver(app, 1500);
    const slider = app.getByRole('slider', { name: 'Direction' });
    const box = await slider.boundingBox();
    if (box === null) throw new Error('The profile is not shown.');
    for (let at = 0.2; at < 0.9; at += 0.1) await app.mouse.move(box.x + box.width * at, box.y + 40);
    // The foot line's numbers have as many digits as they need; everything else stands still.
    expect(await shift).toBeLessThan(0.0005);
    const before = await panelPlaces(app);
    await app.getByRole('radio', { name: 'even' }).check();
    await expect(app.getByText(/^Predicted: /u)).toBeVisible({ timeout: 120_000 });
    await app.getByLabel('Inner').fill('1');
    expect(await panelPlaces(app)).toEqual(before);
    const over = await app.evaluate(() => ({
      right: document.documentElement.scrollWidth - innerWidth,
      below: document.documentElement.scrollHeight - innerHeight,
    }));
    expect(over).toEqual({ right: 0, below: 0 });
  });
}
