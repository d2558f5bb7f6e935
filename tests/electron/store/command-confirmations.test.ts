import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { CONFIRMATION_SECONDS, CommandConfirmations } from '../../../electron/store/command-confirmations.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

async function begin() {
  const folder = await temporaryFolder();
  let now = Date.parse('2026-11-28T12:00:00Z');
  const open = (): CommandConfirmations =>
    new CommandConfirmations(path.join(folder, 'confirmations'), () => new Date(now));
  const issued = await open().issue('pad', 'what was shown');
  if (!issued.ok) throw new Error(issued.problem.says);
  return { folder, open, token: issued.value.token, pass: (seconds: number) => (now += 1000 * seconds) };
}

describe('CommandConfirmations', () => {
  it('are good once, in another program, for exactly what was shown', async () => {
    const { open, token } = await begin();
    expect(await open().use('pad', token, 'something else')).toMatchObject({ problem: { code: 'confirmation-other' } });
    expect(await open().use('other pad', token, 'what was shown')).toMatchObject({
      problem: { code: 'confirmation-unknown' },
    });
    expect(await open().use('pad', token, 'what was shown')).toMatchObject({ ok: true });
    expect(await open().use('pad', token, 'what was shown')).toMatchObject({
      problem: { code: 'confirmation-unknown' },
    });
  });

  it('are as good as before where the write was refused before it began', async () => {
    const { open, token, pass } = await begin();
    const used = await open().use('pad', token, 'what was shown');
    if (used.ok) expect(await used.value()).toMatchObject({ ok: true });
    expect(await open().use('pad', token, 'what was shown')).toMatchObject({ ok: true });
    if (used.ok) await used.value();
    pass(CONFIRMATION_SECONDS + 1);
    expect(await open().use('pad', token, 'what was shown')).toMatchObject({
      problem: { code: 'confirmation-expired' },
    });
  });

  it('are too old where the clock was set back: how old cannot be told', async () => {
    const { open, token, pass } = await begin();
    pass(-2);
    expect(await open().check('pad', token)).toMatchObject({ problem: { code: 'confirmation-expired' } });
  });

  it('serve one of two programs that use them at once', async () => {
    const { open, token } = await begin();
    const both = await Promise.all([0, 1].map(() => open().use('pad', token, 'what was shown')));
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
  });

  it('last until the end of their time and no longer', async () => {
    const { open, token, pass } = await begin();
    pass(CONFIRMATION_SECONDS);
    expect(await open().check('pad', token)).toMatchObject({ ok: true });
    pass(1);
    expect(await open().check('pad', token)).toMatchObject({ problem: { code: 'confirmation-expired' } });
  });

  it('stand in no file themselves', async () => {
    const { folder, token } = await begin();
    const names = await readdir(path.join(folder, 'confirmations'));
    expect(names).toHaveLength(1);
    const text = await readFile(path.join(folder, 'confirmations', names[0] ?? ''), 'utf8');
    expect(text).toContain('stickwright-confirmation');
    expect(text).not.toContain(token);
  });
});
