/** Where every part of the page stands: while only figures change, no part may move or grow by a pixel. */
import type { Page } from '@playwright/test';

const PARTS =
  'section, header, footer, nav, h1, h2, h3, button, label, input, select, fieldset, th, td, li, dt, dd, canvas, output, figure, main svg, main p > span';

/** Tag, place and size of each part, in whole pixels, in document order. */
async function boxesOf(page: Page): Promise<string[]> {
  return page.evaluate(
    (parts) =>
      [...document.querySelectorAll(parts)]
        // What is drawn inside a picture moves; the picture must not.
        .filter((part) => part.closest('svg')?.parentElement?.closest('svg') === undefined)
        .map((part) => {
          const { x, y, width, height } = part.getBoundingClientRect();
          const place = [x, y, width, height].map(Math.round).join(' ');
          return `${part.tagName.toLowerCase()}.${part.classList[0] ?? ''} at ${place}`;
        }),
    PARTS,
  );
}

/** What stood elsewhere at one of `looks` later looks, some hundred milliseconds apart; empty where nothing moved. */
export async function movedParts(page: Page, looks: number): Promise<string[]> {
  const first = await boxesOf(page);
  const moved = new Set<string>();
  for (let look = 0; look < looks; look += 1) {
    await page.waitForTimeout(150);
    const now = await boxesOf(page);
    now.forEach((box, index) => {
      if (box !== first[index]) moved.add(`${first[index] ?? 'nothing'} became ${box}`);
    });
  }
  return [...moved];
}
