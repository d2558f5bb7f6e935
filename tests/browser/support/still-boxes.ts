/** Where every part of the page stands: while only figures change, no part may move or grow by a pixel. */
import type { Page } from '@playwright/test';

const PARTS =
  'section, header, footer, nav, h1, h2, h3, button, label, input, select, fieldset, th, td, li, dt, dd, canvas, output, figure, main svg, main p > span';

interface Box {
  /** Its class may change while it stands still: what is asked for now is marked. */
  readonly named: string;
  /** Tag, place and size in whole pixels. */
  readonly at: string;
}

/** The parts in document order. */
async function boxesOf(page: Page): Promise<Box[]> {
  return page.evaluate(
    (parts) =>
      [...document.querySelectorAll(parts)]
        // What is drawn inside a picture moves; the picture must not.
        .filter((part) => part.closest('svg')?.parentElement?.closest('svg') === undefined)
        .map((part) => {
          const { x, y, width, height } = part.getBoundingClientRect();
          const tag = part.tagName.toLowerCase();
          return {
            named: `${tag}.${part.classList[0] ?? ''}`,
            at: `${tag} at ${[x, y, width, height].map(Math.round).join(' ')}`,
          };
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
    now.forEach(({ named, at }, index) => {
      const before = first[index];
      if (at !== before?.at) moved.add(`${named}: ${before?.at ?? 'nothing'} became ${at}`);
    });
  }
  return [...moved];
}
