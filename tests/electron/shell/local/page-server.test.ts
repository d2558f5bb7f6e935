import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { servePage } from '../../../../electron/shell/local/page-server.ts';

describe('servePage', () => {
  let folder: string;
  let served: Awaited<ReturnType<typeof servePage>>;

  beforeEach(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'stickwright-page-'));
    await writeFile(path.join(folder, 'index.html'), '<p>bench</p>');
    await writeFile(path.join(folder, 'gone.js'), 'export {};');
    served = await servePage(folder, 0);
  });

  afterEach(async () => {
    served.server.close();
    await rm(folder, { recursive: true, force: true });
  });

  const get = (file: string): Promise<Response> => fetch(`http://127.0.0.1:${String(served.port)}/${file}`);

  it('goes on when a file of the page vanished, e.g. because the page is built anew', async () => {
    await rm(path.join(folder, 'gone.js'));
    await expect(get('gone.js').then((answer) => answer.text())).rejects.toThrow();
    const page = await get('index.html');
    expect(await page.text()).toBe('<p>bench</p>');
  });

  it('has nothing but the files of the page', async () => {
    expect((await get('other.js')).status).toBe(404);
    expect((await get('%2e%2e/etc/passwd')).status).toBe(404);
  });
});
