/** The built local shell is ended amid a write to a memory: the memory is wholly as it was or wholly as planned, and the journal says which. */
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, it } from 'vitest';
import { bundledMaps } from '../../../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../../../core/image/memory-map.ts';
import { patchedImage } from '../../../../core/image/patched-image.ts';
import type { EventPayload, Reply } from '../../../../shared/contract.ts';
import { Vault } from '../../../../electron/store/image-vault.ts';
import { fromPad, wanted } from '../../../support/fault-pad.ts';
import { askPage, enterRun } from './ask-page.ts';
import type { Page } from './open-shell.ts';
import { localRuns } from './run-local.ts';

const { folder, start } = localRuns();
const [packed] = bundledMaps as [MemoryMap];

type State = EventPayload<'memory.state'>;

function states(page: Page): State[] {
  return page.frames.flatMap((frame) => {
    const { name, payload } = frame as { name?: string; payload?: State };
    return name === 'memory.state' && payload !== undefined ? [payload] : [];
  });
}

/** A simulated pad whose memory was read and is about to be written; with the images on both sides. */
async function confirmed(page: Page) {
  const { pad } = await askPage<{ pad: string }>(page, 'pads.plugDemo', { name: 'healthy' });
  await askPage(page, 'pads.open', { pad });
  await askPage(page, 'memory.read', { pad });
  await page.until(() => states(page).some(({ end }) => end !== null));
  const before = states(page).at(-1)?.image ?? '';
  const listed = await askPage<Reply<'pads.list'>>(page, 'pads.list', {});
  const serial = listed.find((one) => one.pad === pad)?.identity.serial ?? null;
  const wish = { store: { layer: 'user', mappings: wanted, from: fromPad(serial) } };
  const plan = await askPage<Reply<'images.plan'>>(page, 'images.plan', {
    image: before,
    map: packed.id,
    wish,
  });
  await askPage(page, 'memory.allow', { pad, writing: true });
  const preview = { pad, wish: { plan: plan.plan } };
  const { token } = await askPage<Reply<'memory.preview'>>(page, 'memory.preview', preview);
  return { write: { pad, token }, before, changes: plan.changes };
}

/** An image that the program kept, proved against its SHA-256. */
async function keptImage(image: string): Promise<Uint8Array> {
  const kept = await new Vault(path.join(folder, 'vault')).read(image);
  if (!kept.ok) throw new Error(kept.problem.says);
  return kept.value;
}

/** Without what changes by itself. */
function settled(image: Uint8Array): Uint8Array {
  const copy = Uint8Array.from(image);
  for (const { offset, length } of packed.volatile) copy.fill(0, offset, offset + length);
  return copy;
}

it.each(['SIGTERM', 'SIGINT'] as const)('%s amid a write ends it, then the program', async (signal) => {
  const run = start();
  const page = await enterRun(run);
  const { write, before, changes } = await confirmed(page);
  const known = new Set(await readdir(path.join(folder, 'journals', 'over')).catch(() => []));
  const read = states(page).length;
  await askPage(page, 'memory.write', write);
  await page.until(() =>
    states(page)
      .slice(read)
      .some(({ writing }) => writing),
  );
  run.child.kill(signal);
  expect(await run.ended).toMatchObject({ code: 0, stderr: '' });

  await page.ended;
  const last = states(page).at(-1);
  expect(last).toMatchObject({ doing: 'write', step: 'over' });
  const old = await keptImage(before);
  const planned = patchedImage(old, changes);
  if (!planned.ok) throw new Error(planned.problem.says);
  const sides = { before: settled(old), after: settled(planned.value) };
  const end = last?.end === 'after' ? 'after' : 'before';
  expect(last).toMatchObject({ end });
  expect(settled(await keptImage(last?.image ?? ''))).toEqual(sides[end]);
  expect(sides.before).not.toEqual(sides.after);
  // The journal is closed with that very end.
  const over = (await readdir(path.join(folder, 'journals', 'over'))).filter((name) => !known.has(name));
  expect(over).toHaveLength(1);
  const lines = (await readFile(path.join(folder, 'journals', 'over', over[0] ?? ''), 'utf8')).trim().split('\n');
  const steps = lines.slice(1).map((line) => JSON.parse(line) as { step: string; end?: string });
  expect(steps.some(({ step }) => step === 'write')).toBe(true);
  expect(steps.at(-1)).toMatchObject({ step: 'end', end });
});
