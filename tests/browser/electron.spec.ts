import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { _electron, expect, test } from '@playwright/test';
import { electronBinary } from '../../build/electron-runtime.js';

const root = path.resolve(import.meta.dirname, '../..');
const binary = electronBinary();
const reason = 'SKIPPED LOUDLY: the Electron runtime is not on this machine, so the real window was not opened.';

test('the real Electron window opens on the simulated pad, sandboxed and without Node', async () => {
  if (binary === undefined) console.warn(reason);
  test.skip(binary === undefined, reason);
  const home = await mkdtemp(path.join(tmpdir(), 'stickwright-electron-'));
  const app = await _electron.launch({
    executablePath: binary ?? '',
    // As root, which continuous integration is, Chromium has no sandbox to offer.
    args: [...(process.getuid?.() === 0 ? ['--no-sandbox'] : []), root],
    env: { ...process.env, STICKWRIGHT_HOME: home },
  });
  const page = await app.firstWindow();
  await expect(page.getByText(/\d+ reports\/s/u).first()).toBeVisible();
  expect(new URL(page.url()).protocol).toBe('app:');
  expect(await page.evaluate(() => ['require', 'process', 'module'].filter((name) => name in globalThis))).toEqual([]);
  await app.close();
});
