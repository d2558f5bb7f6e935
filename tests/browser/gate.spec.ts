/** What a stick's gate is known from, chosen in the Findings view. */
import type { Page } from '@playwright/test';
import { expectAccessible } from './support/accessible.ts';
import { expect, openAddress, test } from './support/app.ts';
import { makeDemoLog } from './support/demo-log.ts';
import { openLog } from './support/open-log.ts';

let logs: Record<'shown' | 'earlier' | 'foreign', string>;

test.beforeAll(async () => {
  test.setTimeout(120_000);
  const few = ['--stick', 'left', '--steps', 'rest,rim'];
  logs = {
    earlier: await makeDemoLog('healthy', ...few, '--releases', '20'),
    foreign: await makeDemoLog('loose', ...few),
    shown: await makeDemoLog('healthy', ...few),
  };
});

async function take(app: Page, log: string): Promise<string> {
  await openLog(app, log);
  return new URLSearchParams(new URL(app.url()).hash.split('?')[1]).get('survey') ?? '';
}

async function openFindings(app: Page, survey: string): Promise<void> {
  await openAddress(app, `#/findings?stick=left&survey=${survey}`);
  await expect(app.getByRole('region', { name: 'Gate' })).toBeVisible({ timeout: 60_000 });
}

for (const scheme of ['light', 'dark'] as const) {
  test.describe(`in ${scheme}`, () => {
    test.use({ colorScheme: scheme, viewport: { width: 1280, height: 800 } });

    test('a gate becomes known, sharpens the findings, outlives a reload, and is unknown again', async ({ app }) => {
      test.setTimeout(180_000);
      const [earlier, foreign, shown] = [
        await take(app, logs.earlier),
        await take(app, logs.foreign),
        await take(app, logs.shown),
      ];
      await openFindings(app, shown);
      const gate = app.getByRole('region', { name: 'Gate' });
      const source = gate.getByLabel('What the gate is known from');
      const told = gate.getByLabel('Survey that tells of the gate');
      const back = gate.getByRole('button', { name: 'take back what it is known from' });
      const findings = app.getByRole('region', { name: 'Findings' });
      const seat = app.getByRole('region', { name: 'List of findings' }).getByText(/of its gate's centre/u);
      const judgedWith = findings.getByText(/^Judged with the gate known from/u);
      await app.getByText(/held, \d+ checks$/u).click();
      const alone = await seat.textContent();
      await expect(judgedWith).toHaveCount(0);
      await expect(told).toBeDisabled();
      // A survey of another pad is not offered.
      await expect(told.locator(`option[value="${earlier}"]`)).toHaveCount(1, { timeout: 60_000 });
      await expect(told.locator(`option[value="${foreign}"]`)).toHaveCount(0);
      await expectAccessible(app);
      // What a check came to keeps apart from its name.
      const cannotSay = findings
        .getByRole('article')
        .getByText(/^\W*cannot say$/u)
        .first();
      await expect(cannotSay).toBeVisible();
      expect(await cannotSay.evaluate((mark) => mark.scrollWidth - mark.clientWidth)).toBe(0);
      await app.screenshot({ path: test.info().outputPath('unknown.png') });

      // From the finding that the gate hides to the choice, by keyboard.
      await app
        .getByRole('button', { name: /^look finer: choose a survey under Gate, for Range by direction$/u })
        .press('Enter');
      await expect(source).toBeFocused();
      await source.selectOption('reference part');
      await expect(gate.getByRole('status')).toContainText('Choose its survey');
      await app.keyboard.press('Tab');
      await expect(told).toBeFocused();
      await told.selectOption(earlier);
      await expect(judgedWith).toHaveText(
        /^Judged with the gate known from a reference part in this shell; its survey: fitted, .*\d\d:\d\d · Bench pad.* · healthy-1\.$/u,
        { timeout: 60_000 },
      );
      await expect(seat).not.toHaveText(alone ?? '');
      await expectAccessible(app);
      await app.screenshot({ path: test.info().outputPath('known.png') });

      await app.reload();
      await expect(source).toHaveValue('reference part', { timeout: 60_000 });
      await expect(told).toHaveValue(earlier);
      await expect(judgedWith).toBeVisible();

      await back.click();
      await expect(judgedWith).toHaveCount(0, { timeout: 60_000 });
      await expect(source).toHaveValue('');
      await app.getByText(/held, \d+ checks$/u).click();
      await expect(seat).toHaveText(alone ?? '');
    });
  });
}
