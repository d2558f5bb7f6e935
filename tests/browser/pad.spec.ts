import { expect, test } from './support/app.ts';
import { movedParts } from './support/still-boxes.ts';

test('says who the pad is, what its counts mean and how they come', async ({ app }) => {
  const identity = app.getByRole('region', { name: 'Pad in hand' });
  await expect(identity).toContainText('vendor 1209, product 000A');
  await expect(identity).toContainText('sensor counts.');
  await expect(identity).toContainText('before the mapping that is stored in the pad');
  await expect(identity).toContainText('reports/s');
  await expect(app.getByRole('banner')).toContainText('0 gaps');
});

test('the rails show the counts as they come and the extents seen', async ({ app }) => {
  const left = app.getByLabel('left x, raw count');
  await app.getByRole('radio', { name: 'round the gate' }).check();
  const seen = new Set<string>();
  await expect
    .poll(async () => {
      seen.add(await left.innerText());
      return seen.size;
    })
    .toBeGreaterThan(5);
  await app.getByRole('radio', { name: 'let go' }).check();
  await expect(app.getByText(/left x seen from/u)).toBeAttached();
});

test('nothing moves while readings stream', async ({ app }) => {
  await app.getByRole('radio', { name: 'wander' }).check();
  await expect(app.getByLabel('left x, raw count')).not.toHaveText('–');
  expect(await movedParts(app, 15)).toEqual([]);
  await app.getByRole('radio', { name: 'let go' }).check();
});

test('a further simulated pad is plugged in, taken in hand and told apart by its counts', async ({ app }) => {
  await app.getByLabel('Simulated pad').selectOption('plain');
  await app.getByRole('button', { name: 'Plug in', exact: true }).click();
  const identity = app.getByRole('region', { name: 'Pad in hand' });
  await expect(identity).toContainText('reported counts.');
  await expect(identity).toContainText('a proposal is for the host only');
  await expect(app.getByRole('region', { name: 'Axis rails' })).toContainText('right 255');
  const hand = app.getByRole('combobox', { name: 'Pad in hand' });
  const healthy = await hand.locator('option').filter({ hasText: 'healthy-1' }).getAttribute('value');
  await hand.selectOption(healthy);
  await expect(identity).toContainText('sensor counts.');
});

test('the worklist names every control and what is still open', async ({ app }) => {
  const list = app.getByRole('region', { name: 'Controls', exact: true });
  await expect(list).toContainText('26 of 26 still open');
  await expect(list.getByRole('row')).toHaveCount(27);
  await expect(list.getByRole('img', { name: 'Button 1 pressed: not yet' })).toBeVisible();
  await expect(list).toContainText('Button 11, left stick');
});
