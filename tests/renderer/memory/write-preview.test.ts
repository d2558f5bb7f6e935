// @vitest-environment happy-dom
/** The confirmation of a write counts down once, and what was accepted stands while it does. */
import { flushSync } from 'svelte';
import { expect, it, onTestFinished, vi } from 'vitest';
import { provideMemory, type MemorySession, type Preview } from '../../../renderer/memory/memory-session.svelte.ts';
import WritePreview from '../../../renderer/memory/WritePreview.svelte';
import { showPart, sole } from '../support/show-part.ts';

const preview: Preview = {
  token: 't1',
  memory: 'm',
  expiresInSeconds: 5,
  changes: [{ offset: 64, old: '00', new: '01', means: 'user left x.min 800 → 801' }],
  blocks: [{ offset: 64, bytes: 8 }],
  asks: [{ code: 'factory', says: 'This changes the factory layer.' }],
  cautions: ['Keep a backup elsewhere.'],
};

function shown() {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'performance'] });
  onTestFinished(() => void vi.useRealTimers());
  const memory = { putPreviewAway: vi.fn(), confirm: vi.fn() };
  const page = showPart(WritePreview, () => provideMemory(memory as unknown as MemorySession), { preview });
  const boxes = [...page.querySelectorAll<HTMLInputElement>('input[type=checkbox]')];
  const write = sole(page, 'button', /^Write this now$/u);
  const pass = (millis: number): string => {
    vi.advanceTimersByTime(millis);
    flushSync();
    return sole(page, 'span', /^good for/u).textContent;
  };
  return { memory, boxes, write, pass };
}

it('goes down to its end, and then is put away', () => {
  const { memory, pass } = shown();
  expect([0, 1000, 1000, 1000, 1000].map(pass)).toEqual([5, 4, 3, 2, 1].map((left) => `good for ${left} s`));
  expect(memory.putPreviewAway).not.toHaveBeenCalled();
  expect(pass(1000)).toBe('good for 0 s');
  expect(memory.putPreviewAway).toHaveBeenCalledOnce();
});

it('keeps what was accepted from second to second, and writes with it', () => {
  const { memory, boxes, write, pass } = shown();
  expect([boxes.length, write.disabled]).toEqual([2, true]);
  for (const box of boxes) box.click();
  flushSync();
  expect(write.disabled).toBe(false);
  pass(3000);
  expect(boxes.map(({ checked }) => checked)).toEqual([true, true]);
  expect(write.disabled).toBe(false);
  write.click();
  expect(memory.confirm).toHaveBeenCalledExactlyOnceWith(['factory']);
});
