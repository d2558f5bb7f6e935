/** A folder of its own for each test, removed afterwards. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

export async function temporaryFolder(): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), 'stickwright-test-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}
