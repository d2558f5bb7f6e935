import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import { bothMappings, leftMapping, makeImage, rightMapping } from '../support/make-image.ts';
import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

const [packed] = bundledMaps as [MemoryMap];
const moved = { left: { ...leftMapping, x: { min: 800, centre: 2070, max: 3350 } }, right: rightMapping };
let image = '';
let log = '';

test.beforeAll(async () => {
  test.setTimeout(120_000);
  image = path.join(await mkdtemp(path.join(tmpdir(), 'stickwright-hosts-')), 'pad.bin');
  await writeFile(image, makeImage(packed, { factory: bothMappings, user: moved }));
  log = await makeDemoLog('healthy', '--steps', 'rest,rim');
});

test('shows what a host of one layer sees beside one of the other', async ({ app }) => {
  await openAddress(app, '#/survey?stick=left');
  await openLog(app, log);
  await app.getByRole('link', { name: /^Memory/u }).click();
  await app.getByLabel('Image file to take in').setInputFiles(image);
  await expect(app.getByRole('heading', { name: 'Stored numbers' })).toBeVisible();
  await app.getByRole('link', { name: /^Workbench/u }).click();
  await app.getByRole('link', { name: 'Hosts', exact: true }).click();
  const layers = app.getByLabel('Layers from');
  await expect(layers).not.toHaveValue('');
  const [first, second] = [
    app.getByRole('combobox', { name: 'First host', exact: true }),
    app.getByRole('combobox', { name: 'Second host', exact: true }),
  ];
  const names = [await first.inputValue(), await second.inputValue()];
  expect(new Set(names).size).toBe(2);
  // First the user layer's centre, then the factory layer's.
  const ledger = app.getByRole('region', { name: 'Ledger of the two hosts' });
  await expect(ledger.getByRole('row', { name: /^x centre/u })).toContainText('20702061');
  await expect(app.getByText(/rests \d+\.\d.% off the centre/u)).toHaveCount(2);
  await expect(app.getByRole('img', { name: /^Gate and rest in raw counts/u })).toHaveCount(2);
  await expectAccessible(app);

  // A direction selected here is selected everywhere.
  await app.getByRole('slider', { name: 'Direction' }).press('Home');
  await app.getByRole('slider', { name: 'Direction' }).press('ArrowRight');
  await expect(app).toHaveURL(/direction=5/u);

  await first.selectOption(names[1] ?? '');
  await expect(app.getByText('Both read the same six numbers: they see the same.')).toBeVisible();

  // Without an image the log's own word of the layers counts: this pad has no user layer.
  await layers.selectOption('');
  await expect(app.getByText(/nothing valid/u).first()).toBeAttached();
});
