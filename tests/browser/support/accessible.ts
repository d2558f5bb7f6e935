/** Holds a page against the rules of axe-core, best practices included. */
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

export async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const told = violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.target.join(' ')) }));
  expect(told).toEqual([]);
}
