/** Watches how far things move on the page without the user having done anything. */
import type { Page } from '@playwright/test';

interface LayoutShift extends PerformanceEntry {
  readonly value: number;
  readonly hadRecentInput: boolean;
}

/** The sum of layout shifts (Layout Instability API) over so many milliseconds; 0 where nothing moved. */
export async function layoutShiftOver(page: Page, millis: number): Promise<number> {
  return page.evaluate(async (span) => {
    let sum = 0;
    const observer = new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as LayoutShift[]) if (!entry.hadRecentInput) sum += entry.value;
    });
    observer.observe({ type: 'layout-shift' });
    await new Promise((resolve) => setTimeout(resolve, span));
    observer.disconnect();
    return sum;
  }, millis);
}
