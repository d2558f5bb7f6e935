import type { Page } from '@playwright/test';
import { expect, openAddress, test } from './support/app.ts';
import { movedParts } from './support/still-boxes.ts';

async function openAid(app: Page): Promise<void> {
  await openAddress(app, '#/pad/fitting?stick=left');
  await expect(app.getByRole('heading', { name: 'Fitting aid' })).toBeVisible();
  await expect(app.getByLabel('left x raw count')).not.toHaveText('–');
}

test('opens from Pad by one key and leaves by another', async ({ app }) => {
  await expect(app.getByLabel('left x, raw count')).not.toHaveText('–');
  await app.keyboard.press('f');
  await expect(app.getByRole('heading', { name: 'Fitting aid' })).toBeVisible();
  await app.keyboard.press('Escape');
  await expect(app.getByRole('heading', { name: 'Axis rails' })).toBeVisible();
});

for (const [width, height] of [
  [1280, 720],
  [1920, 1080],
] as const) {
  test(`its figures can be read from a metre at ${String(width)} by ${String(height)}`, async ({ app }) => {
    await app.setViewportSize({ width, height });
    await openAid(app);
    for (const axis of ['x', 'y']) {
      const size = await app
        .getByLabel(`left ${axis} raw count`)
        .evaluate((figure) => Number.parseFloat(getComputedStyle(figure).fontSize));
      expect(size).toBeGreaterThanOrEqual(0.18 * height);
    }
  });
}

test('takes what it reads as the target, and is then inside', async ({ app }) => {
  await openAid(app);
  await app.getByLabel('x target').fill('1500');
  await app.getByLabel('x target').press('Enter');
  const x = app.getByRole('region', { name: 'left x' });
  await expect(x).toContainText('too far right');
  await expect(x).toContainText('target 1500');
  await app.getByRole('heading', { name: 'Fitting aid' }).click();
  await app.keyboard.press('t');
  await expect(x).toContainText('inside');
  await expect(app.getByRole('region', { name: 'left y' })).toContainText('inside');
  expect(Math.abs(Number(await app.getByLabel('x target').inputValue()) - 2060)).toBeLessThan(40);
});

test('refuses a target that the field cannot hold and keeps the old one', async ({ app }) => {
  await openAid(app);
  await app.getByLabel('y target').fill('9000');
  await app.getByLabel('y target').press('Enter');
  await expect(app.getByText('A target of y lies between 0 and 4095.')).toBeVisible();
  await expect(app.getByRole('region', { name: 'left y' })).not.toContainText('9000');
});

test('is muted and woken by one key, and keeps keys out of what is being typed', async ({ app }) => {
  await openAid(app);
  const mute = app.getByRole('button', { name: /Tone is/u });
  await app.keyboard.press('m');
  await expect(mute).toHaveAttribute('aria-pressed', 'true');
  await app.getByLabel('x target').focus();
  await app.keyboard.press('m');
  await expect(mute).toHaveAttribute('aria-pressed', 'true');
});

test('nothing moves while the figures change', async ({ app }) => {
  await app.getByRole('radio', { name: 'wander' }).check();
  await openAid(app);
  expect(await movedParts(app, 15)).toEqual([]);
  await app.keyboard.press('Escape');
  await app.getByRole('radio', { name: 'let go' }).check();
});
