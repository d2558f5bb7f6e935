/** Holds a page against the rules of axe-core, best practices included. */
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

/** Asks for what breaks a rule alone, and in the page itself: it has no frame of another origin that would need a page beside it. */
export async function expectAccessible(page: Page): Promise<void> {
  const axe = new AxeBuilder({ page }).setLegacyMode(true).options({ resultTypes: ['violations'] });
  const { violations } = await axe.analyze();
  const told = violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.target.join(' ')) }));
  expect(told).toEqual([]);
}
