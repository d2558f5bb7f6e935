import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import { bothMappings, leftMapping, makeImage, rightMapping } from '../support/make-image.ts';
import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

const [packed] = bundledMaps as [MemoryMap];
const moved = { left: { ...leftMapping, x: { min: 800, centre: 2070, max: 3350 } }, right: rightMapping };
let folder = '';
let log = '';

test.beforeAll(async () => {
  test.setTimeout(120_000);
  folder = await mkdtemp(path.join(tmpdir(), 'stickwright-memory-'));
  await writeFile(path.join(folder, 'pad.bin'), makeImage(packed, { factory: bothMappings, user: moved }));
  log = await makeDemoLog('healthy', '--steps', 'rest,rim');
});

/** Takes an image file in, as a person would. */
async function takeIn(app: Page, name: string): Promise<void> {
  await app.getByLabel('Image file to take in').setInputFiles(path.join(folder, name));
}

async function openMemory(app: Page): Promise<void> {
  await openAddress(app, '#/memory?stick=left');
  await takeIn(app, 'pad.bin');
  await expect(app.getByRole('heading', { name: 'Stored numbers' })).toBeVisible();
}

test('without an image it says what to do, and bad files are refused in one sentence', async ({ app }) => {
  await openAddress(app, '#/memory?stick=left');
  await expect(app.getByText(/^Take in a dump/u)).toBeVisible();
  await expectAccessible(app);
  await writeFile(path.join(folder, 'empty.bin'), '');
  await takeIn(app, 'empty.bin');
  await expect(app.getByText(/^! The image is empty/u)).toBeVisible();
});

for (const scheme of ['light', 'dark'] as const)
  test(`an image shows its layers beside the survey, in ${scheme}`, async ({ app }) => {
    await app.emulateMedia({ colorScheme: scheme });
    await openLog(app, log);
    await app.getByRole('link', { name: /^Memory/u }).click();
    await takeIn(app, 'pad.bin');
    const stored = app.getByRole('region', { name: 'Stored numbers' });
    await expect(stored.getByRole('row', { name: /^x min/u })).toContainText('850');
    await expect(stored.getByRole('row', { name: /^x max/u }).getByRole('cell')).toHaveCount(4);
    await expect(stored.getByRole('row', { name: /^x max/u })).toContainText(/3350/u);
    await expect(stored.getByRole('row', { name: /^a host that knows both layers/u })).toContainText('user');
    await expect(
      stored
        .getByRole('row', { name: /^x centre/u })
        .getByRole('cell')
        .last(),
    ).toContainText(/\d{4}/u);
    await expectAccessible(app);
  });

test('carrying a layer shows every change before anything is written, and leaves a patch and a new image', async ({
  app,
}) => {
  await openMemory(app);
  const plan = app.getByRole('region', { name: /^Plan$/u });
  await plan.getByText('user into factory').click();
  await plan.getByRole('button', { name: 'Plan it' }).click();
  const changes = plan.getByRole('region', { name: 'Planned changes' });
  const row = changes.getByRole('row', { name: /^factory left x\.max/u });
  await expect(row).toContainText('3270');
  await expect(row).toContainText('3350');
  await expectAccessible(app);
  const patchFile = app.waitForEvent('download');
  await plan.getByRole('button', { name: 'Save the patch', exact: true }).click();
  const patch = JSON.parse(await readFile(await (await patchFile).path(), 'utf8')) as { kind: string };
  expect(patch.kind).toBe('stickwright-patch');
  const imageFile = app.waitForEvent('download');
  await plan.getByRole('button', { name: 'Save the patched image' }).click();
  const after = await readFile(await (await imageFile).path());
  const before = await readFile(path.join(folder, 'pad.bin'));
  expect(after).toHaveLength(before.length);
  expect(after.filter((byte, index) => byte !== before[index]).length).toBeGreaterThan(2);
  // Another wish makes the plan on the screen a plan for something else.
  await plan.getByText('factory into user').click();
  await expect(changes).toBeHidden();
});

test('two kept images are compared by name and byte', async ({ app }) => {
  await writeFile(path.join(folder, 'other.bin'), makeImage(packed, { factory: moved, user: moved }));
  await openAddress(app, '#/memory?stick=left');
  await takeIn(app, 'other.bin');
  await expect(app.getByRole('heading', { name: 'Stored numbers' })).toBeVisible();
  await takeIn(app, 'pad.bin');
  await app.getByRole('link', { name: 'Kept images' }).click();
  const compare = app.getByRole('region', { name: /^Compare$/u });
  await compare.getByLabel('with').selectOption({ label: await otherOption(compare) });
  await expect(compare.getByRole('row', { name: /factory left x\.max/u })).toBeVisible();
  await expectAccessible(app);
});

/** The option whose image was taken in from the other file. */
async function otherOption(compare: ReturnType<Page['getByRole']>): Promise<string> {
  const option = compare.locator('option', { hasText: 'other.bin' }).first();
  return (await option.textContent()) ?? '';
}

test('the finder names likely places; a confirmed one becomes an unproven map', async ({ app }) => {
  await openLog(app, log);
  await app.getByRole('link', { name: /^Memory/u }).click();
  await takeIn(app, 'pad.bin');
  await app.getByRole('link', { name: 'Find and maps' }).click();
  await app.getByRole('button', { name: 'Find by the survey' }).click();
  const places = app.getByRole('region', { name: 'Likely places' });
  await expect(places.getByRole('row', { name: /0x2c10/u }).first()).toBeVisible({ timeout: 120_000 });
  await expectAccessible(app);
  // What a row can be confirmed as is in sight, however long its readings are.
  expect(await places.evaluate((box) => box.scrollWidth - box.clientWidth)).toBe(0);
  // Readings that fit as well as each other: none may be confirmed before one was chosen.
  const factory = places.getByRole('checkbox', { name: 'left 0x2c10, right 0x2c30 is the factory layer' });
  await expect(factory).toBeDisabled();
  // What decides is said once for all rows that it holds for.
  await expect(places.getByText(/readings fit these bytes about equally well and leave open/u)).toHaveCount(1);
  await places
    .getByRole('combobox', { name: 'Reading of left 0x2c10, right 0x2c30' })
    .selectOption({ label: 'left 0x2c10, right 0x2c30 · 12-bit pairs: below, above, centre' });
  await factory.check();
  // Found anew, the place is not confirmed, and nothing of it is saved.
  await app.getByLabel('Name of the map').fill('Bench pad of mine');
  const save = app.getByRole('button', { name: 'Save as a map' });
  await expect(save).toBeEnabled();
  await app.getByRole('button', { name: 'Find by the survey' }).click();
  await expect(factory).toBeDisabled({ timeout: 120_000 });
  await expect(save).toBeDisabled();
  await places
    .getByRole('combobox', { name: 'Reading of left 0x2c10, right 0x2c30' })
    .selectOption({ label: 'left 0x2c10, right 0x2c30 · 12-bit pairs: below, above, centre' });
  await factory.check();
  await app.getByLabel('Name of the map').fill('Bench pad of mine');
  await app.getByRole('button', { name: 'Save as a map' }).click();
  await expect(app.getByText(/^Saved as bench-pad-of-mine, unproven/u)).toBeVisible();
  // Nothing was written with it: no survey can prove it yet.
  await app.getByRole('button', { name: 'The survey shown agrees: call bench-pad-of-mine proven' }).click();
  await expect(app.getByText(/^No write with the map bench-pad-of-mine to this pad was read back/u)).toBeVisible();
});

test('typed numbers are found, and a bad one is told in place', async ({ app }) => {
  await openMemory(app);
  await app.getByRole('link', { name: 'Find and maps' }).click();
  await app.getByRole('button', { name: 'Type values' }).click();
  await app.getByRole('button', { name: 'Find by these' }).click();
  await expect(app.getByText(/Write x min as a whole count/u)).toBeVisible();
  const numbers = { 'x min': 850, 'x centre': 2061, 'x max': 3270, 'y min': 840, 'y centre': 2038, 'y max': 3235 };
  for (const [name, value] of Object.entries(numbers)) await app.getByLabel(name).fill(String(value));
  await app.getByRole('button', { name: 'Find by these' }).click();
  await expect(app.getByRole('region', { name: 'Likely places' }).getByRole('row', { name: /0x2c10/u }).first()).toBeVisible(); // prettier-ignore
});

test('yours is planned on what the pad holds, shown in full, confirmed, written, read back and there', async ({
  app,
}) => {
  await openLog(app, log);
  await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
  const mark = app.getByRole('slider', { name: 'x maximum' });
  await mark.press('ArrowLeft');
  const wanted = await mark.getAttribute('aria-valuenow');
  await app.getByRole('link', { name: /^Memory/u }).click();
  await app.getByRole('button', { name: 'Read it from the pad' }).click();
  await expect(app.getByText('Read twice, equal, and kept.')).toBeVisible({ timeout: 120_000 });
  const plan = app.getByRole('region', { name: /^Plan$/u });
  await plan.getByRole('radio', { name: 'yours' }).check();
  await plan.getByRole('radio', { name: 'user', exact: true }).check();
  // What was nudged is what is asked for; the other stick's verdict asks for nothing.
  await expect(plan.getByRole('checkbox', { name: 'left' })).toBeChecked();
  await expect(plan.getByRole('checkbox', { name: 'right' })).not.toBeChecked();
  await plan.getByRole('checkbox', { name: 'right' }).check();
  await expect(plan.getByText('Only the left stick was nudged; the other is stored as proposed.')).toBeVisible();
  await plan.getByRole('button', { name: 'Plan it' }).click();
  await expect(plan.getByRole('row', { name: /^user left x\.max/u })).toContainText(wanted ?? 'a number');

  // Writing is off until it is switched on for this pad; nothing is written before the confirmation.
  const write = app.getByRole('region', { name: /^Write to the pad$/u });
  await write.getByRole('checkbox', { name: /writing is on/iu }).check();
  await write.getByRole('button', { name: 'Show what would be written' }).click();
  const preview = app.getByRole('group', { name: 'What would be written' });
  await expect(preview.getByRole('button', { name: 'Write this now' })).toBeDisabled();
  await expectAccessible(app);
  await preview.getByRole('checkbox', { name: /^I have checked/u }).check();
  await preview.getByRole('button', { name: 'Write this now' }).click();
  await expect(app.getByText(/Written, read back and compared/u)).toBeVisible({ timeout: 120_000 });

  // The stored numbers are the new ones without another word.
  const stored = app.getByRole('region', { name: /^Stored numbers$/u });
  await expect(stored.getByRole('row', { name: /^x max/u })).toContainText(wanted ?? 'a number', { timeout: 120_000 });
});
