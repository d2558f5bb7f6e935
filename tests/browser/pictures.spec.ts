import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import { bothMappings, leftMapping, makeImage, rightMapping } from '../support/make-image.ts';
import { expect, openAddress, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

const pictures = path.join(import.meta.dirname, 'pictures');
const [packed] = bundledMaps as [MemoryMap];
const moved = { left: { ...leftMapping, x: { min: 800, centre: 2070, max: 3350 } }, right: rightMapping };
let image = '';

test.beforeAll(async () => {
  image = path.join(await mkdtemp(path.join(tmpdir(), 'stickwright-pictures-')), 'pad.bin');
  await writeFile(image, makeImage(packed, { factory: bothMappings, user: moved }));
});

/** Pictures are taken on purpose (`npm run pictures`), so that a test run changes no file of the project. */
const wanted = process.env['PICTURES'] === '1';

for (const scheme of ['light', 'dark'] as const) {
  test(`every view is drawn, ${scheme}`, async ({ app }) => {
    test.skip(!wanted, 'Pictures are taken on purpose: npm run pictures.');
    test.setTimeout(240_000);
    await app.emulateMedia({ colorScheme: scheme });
    const take = async (name: string): Promise<void> => {
      // Live figures go on moving; one moment of them is the picture.
      await app.waitForTimeout(1500);
      const bytes = await app.screenshot({ path: path.join(pictures, `${name}-${scheme}.png`) });
      expect(bytes.length).toBeGreaterThan(20_000);
    };
    await openAddress(app, '#/pad');
    await expect(app.getByText(/\d+ reports\/s/u).first()).toBeVisible();
    await take('pad');
    await app.getByRole('button', { name: /fitting aid/i }).click();
    await take('fitting');
    await app.keyboard.press('Escape');
    await openAddress(app, '#/survey?stick=left');
    await app.getByLabel('let the demonstration hand do it').check();
    await app.getByRole('button', { name: 'Start the survey' }).click();
    await expect(app.getByRole('img', { name: /^[3-9] of 24 releases taken/u })).toBeVisible({ timeout: 120_000 });
    await take('survey');
    await app.keyboard.press('Escape');
    await app.getByRole('button', { name: 'End and keep' }).click();
    await expect(app.getByRole('heading', { name: 'Survey ended early' })).toBeVisible();
    await app.getByRole('button', { name: 'Back to the surveys' }).click();
    await openLog(app, await makeDemoLog('off-centre'));
    await expect(app.getByText(/^Predicted/u)).toBeVisible({ timeout: 120_000 });
    await take('workbench');
    await app.getByRole('slider', { name: 'x maximum' }).press('ArrowLeft');
    await app.getByRole('button', { name: 'samples' }).click();
    await expect(app.getByRole('slider', { name: 'Sample' })).toBeVisible();
    await take('yours');
    await app.getByRole('button', { name: 'samples' }).click();
    await app.getByRole('link', { name: 'Edit as a chain' }).click();
    await expect(app.getByRole('heading', { name: 'Signal path' })).toBeVisible();
    await take('chain');
    await app.getByRole('link', { name: 'Consumers' }).click();
    await expect(app.getByRole('heading', { name: 'Consumers' })).toBeVisible();
    await take('consumers');
    await app.getByRole('link', { name: /^Memory/u }).click();
    await app.getByLabel('Image file to take in').setInputFiles(image);
    await expect(app.getByRole('heading', { name: 'Stored numbers' })).toBeVisible();
    await take('memory');
    await app.getByRole('link', { name: /^Workbench/u }).click();
    await app.getByRole('link', { name: 'Hosts' }).click();
    await expect(app.getByRole('heading', { name: 'Second host' })).toBeVisible();
    await take('hosts');
    await app.getByRole('link', { name: 'Findings' }).click();
    await expect(app.getByRole('heading', { name: 'Verdict' })).toBeVisible();
    await take('findings');
  });
}
