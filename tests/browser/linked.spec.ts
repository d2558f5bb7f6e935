/** What is selected in one view is selected in all, survives leaving a view, and comes back with the address. */
import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

test('stick, direction, sample, stage and survey are selected everywhere at once', async ({ app }) => {
  await openLog(app, await makeDemoLog('off-centre'));
  const parameter = (name: string): string | null =>
    new URLSearchParams(new URL(app.url()).hash.split('?')[1]).get(name);
  const foot = app.getByRole('contentinfo');

  // A direction of the profile is that of the signal path.
  const profile = app.getByRole('slider', { name: 'Direction' });
  await profile.press('Home');
  for (let step = 0; step < 3; step += 1) await profile.press('PageUp');
  await expect.poll(() => parameter('direction')).toBe('135');

  // A release's sample stands in the strip, in the plane, in the rest table and in the foot line.
  await app.getByRole('button', { name: 'samples' }).click();
  const sample = app.getByRole('slider', { name: 'Sample' });
  await expect(sample).toBeVisible();
  await expect(foot).toContainText(/sample at \d+\.\d{3} s: x [\d.]+, y [\d.]+/u);
  await expect(app.getByRole('region', { name: 'Plane' }).locator('circle.sample')).toHaveCount(2);
  await expectAccessible(app);
  const first = parameter('sample');
  await app.getByRole('button', { name: 'Later' }).click();
  await expect.poll(() => parameter('sample')).not.toBe(first);
  const second = parameter('sample');
  await expect(async () => {
    await sample.press('ArrowLeft');
    expect(Number(parameter('sample'))).toBeLessThan(Number(second));
  }).toPass();
  await app.getByRole('button', { name: 'Plane as table' }).click();
  await expect(app.locator('tr[aria-current="true"]').first()).toContainText(/^2/u);
  // The row of the direction is brought into sight, and the heads of its table stay there.
  const rim = app.getByRole('region', { name: /^Rim points/u });
  await expect(rim.locator('tr[aria-current="true"]')).toContainText(/^135°/u);
  await expect(rim.locator('tr[aria-current="true"]')).toBeInViewport({ ratio: 0.9 });
  await expect(rim.getByRole('columnheader', { name: 'direction' })).toBeInViewport({ ratio: 0.9 });
  await app.getByRole('button', { name: 'Plane as table' }).click();

  // The chain takes the direction over and adds a stage to the selection.
  await app.getByRole('link', { name: 'Edit as a chain' }).click();
  await expect(app.getByText(/push toward 135° up-left/u).first()).toBeVisible();
  await openAddress(app, `${new URL(app.url()).hash}&stage=0`);
  await expect(app.getByText(/stage 1 marked/u)).toBeVisible();

  // Other views leave it as it is, and the address alone brings it back.
  await app.getByRole('link', { name: /^Findings/u }).click();
  await app.getByRole('link', { name: /^Memory/u }).click();
  await app.getByRole('link', { name: /^Workbench/u }).click();
  await expect(app.getByRole('slider', { name: 'Sample' })).toBeVisible();
  const address = new URL(app.url()).hash;
  for (const name of ['stick', 'direction', 'survey', 'sample', 'stage']) expect(parameter(name), name).not.toBeNull();
  await openAddress(app, '#/pad?stick=right');
  await expect(app.getByRole('radio', { name: 'right stick' })).toBeChecked();
  await openAddress(app, address);
  await expect(app.getByRole('radio', { name: 'left stick' })).toBeChecked();
  await expect(app.getByRole('slider', { name: 'Sample' })).toBeVisible();
  await expect(app.getByRole('slider', { name: 'Direction' })).toHaveAttribute('aria-valuenow', '135');
  await expect(foot).toContainText(/sample at/u);
});

test('a click on a rest point selects the sample at which that release came to rest', async ({ app }) => {
  await openLog(app, await makeDemoLog('off-centre'));
  const plane = app.getByRole('region', { name: 'Plane' });
  const dots = plane.locator('circle.rest');
  // With the proposal the plane is drawn anew, some frames after the words of it and larger or smaller: a place taken before is
  // another point's.
  await expect(plane.locator('.proposed').first()).toBeAttached({ timeout: 120_000 });
  await expect(dots).not.toHaveCount(0);
  // The magnified rest stands beside the plane: its dots come last.
  const box = await dots.last().boundingBox();
  if (box === null) throw new Error('the rest point is not drawn');
  await app.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await expect(app.getByRole('slider', { name: 'Sample' })).toBeVisible();
  await expect(app.getByText(/^release 24 of 24/u)).toBeVisible();
});
