/** A page of the real app on a real bench; a test fails when the page logs an error or breaks its content policy. */
import { test as base, expect, type Page } from '@playwright/test';
import { startBench, type RunningBench } from './running-bench.ts';

interface Fixtures {
  /** The app, let in and showing its frame. */
  readonly app: Page;
}

interface WorkerFixtures {
  readonly bench: RunningBench;
}

export const test = base.extend<Fixtures, WorkerFixtures>({
  bench: [
    // Playwright reads what a fixture needs from this pattern.
    // eslint-disable-next-line no-empty-pattern
    async ({}, use) => {
      const bench = await startBench();
      await use(bench);
      await bench.stop();
    },
    { scope: 'worker' },
  ],
  app: async ({ page, bench }, use) => {
    const complaints: string[] = [];
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    await page.goto(await bench.newAddress());
    await expect(page.getByRole('navigation', { name: 'Views' })).toBeVisible();
    await use(page);
    expect(complaints).toEqual([]);
  },
});

export { expect };

/** Opens a view by its address, as a bookmark would. */
export async function openAddress(page: Page, address: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, address);
}
