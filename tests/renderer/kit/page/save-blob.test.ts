import { afterEach, describe, expect, it } from 'vitest';
import { failed, done, type Result } from '../../../../core/result.ts';
import { savingState } from '../../../../renderer/kit/page/saving-state.svelte.ts';
import { saveBlob } from '../../../../renderer/kit/page/save-blob.ts';

afterEach(() => void (savingState.says = null));

/** A page of the Electron shell that keeps what it is asked to save. */
function electronPage(answer: () => Promise<Result<{ saved: boolean }>>) {
  const asked: { name: string; text: string }[] = [];
  const save = (name: string, bytes: Uint8Array) => {
    asked.push({ name, text: Buffer.from(bytes).toString() });
    return answer();
  };
  return { asked, page: { bench: { save } } as unknown as Window };
}

describe('saving a file', () => {
  it('goes to the main process in Electron, with the name to offer and every byte', async () => {
    const { asked, page } = electronPage(() => Promise.resolve(done({ saved: true })));
    saveBlob(new Blob(['one,two\n']), 'table.csv', page);
    await expect.poll(() => asked).toEqual([{ name: 'table.csv', text: 'one,two\n' }]);
    expect(savingState.says).toBeNull();
  });

  it('says why a file was not saved, and no more once another is', async () => {
    const full = electronPage(() => Promise.resolve(failed('disk-full', 'The disk is full.')));
    saveBlob(new Blob(['x']), 'a.csv', full.page);
    await expect.poll(() => savingState.says).toBe('The disk is full.');
    const broken = electronPage(() => Promise.reject(new Error('gone')));
    saveBlob(new Blob(['x']), 'a.csv', broken.page);
    await expect
      .poll(() => savingState.says)
      .toBe('a.csv was not saved, for the program did not answer; try it once more.');
    saveBlob(new Blob(['x']), 'a.csv', electronPage(() => Promise.resolve(done({ saved: false }))).page);
    expect(savingState.says).toBeNull();
  });

  it('is the browser’s own download elsewhere', () => {
    const link = { href: '', download: '', clicks: 0, click: () => void (link.clicks += 1) };
    const page = { document: { createElement: () => link } } as unknown as Window;
    saveBlob(new Blob(['x']), 'a.csv', page);
    expect(link).toMatchObject({ download: 'a.csv', clicks: 1 });
    expect(link.href).toMatch(/^blob:/u);
  });
});
