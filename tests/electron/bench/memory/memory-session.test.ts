import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { EventPayload, Reply } from '../../../../shared/contract.ts';
import { fromPad } from '../../../support/fault-pad.ts';
import { follow, makeBench, openFirst, surveyOf, valueOf, type TestBench } from '../make-bench.ts';

type State = EventPayload<'memory.state'>;

const from = fromPad('healthy-1');

const user = {
  left: { x: { min: 700, centre: 2100, max: 3300 }, y: { min: 800, centre: 2000, max: 3200 } },
  right: { x: { min: 820, centre: 2040, max: 3260 }, y: { min: 850, centre: 2055, max: 3260 } },
};

async function ended(made: TestBench, pad: string): Promise<State> {
  let last: State | null = null;
  const stop = made.bench.listen('memory.state', (state) => {
    if (state.pad === pad && state.end !== null) last = state;
  });
  await made.until(() => last !== null);
  stop();
  return last as unknown as State;
}

async function begin(): Promise<{ made: TestBench; pad: string }> {
  const made = await makeBench();
  return { made, pad: await openFirst(made) };
}

async function readAndPlan(made: TestBench, pad: string): Promise<Reply<'images.plan'>> {
  valueOf(await made.bench.handle('memory.read', { pad }));
  const read = await ended(made, pad);
  expect(read).toMatchObject({ end: 'read', problem: null });
  const wish = { store: { layer: 'user' as const, mappings: user, from } };
  const request = { image: read.image ?? '', map: 'bench-pad-packed', wish };
  return valueOf(await made.bench.handle('images.plan', request));
}

describe('a memory session', () => {
  it('is one alone, where two pages begin one at the same moment on a pad that no lock holds', async () => {
    const { made, pad } = await begin();
    const both = await Promise.all([1, 2, 3].map(() => made.bench.handle('memory.read', { pad })));
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(await ended(made, pad)).toMatchObject({ end: 'read', problem: null });
  });

  it('reads, plans, is confirmed, writes, and reads back what was planned', async () => {
    const { made, pad } = await begin();
    const { bench } = made;
    const plan = await readAndPlan(made, pad);
    const shut = await bench.handle('memory.preview', { pad, wish: { plan: plan.plan } });
    expect(shut).toMatchObject({ ok: false, problem: { code: 'memory-off' } });
    expect(valueOf(await bench.handle('memory.allow', { pad, writing: true })).writing).toBe(true);
    const preview = valueOf(await bench.handle('memory.preview', { pad, wish: { plan: plan.plan } }));
    // The checksum covers the marker: it comes last of all.
    expect(preview.blocks.slice(-2).map(({ offset }) => offset)).toEqual([0x7640, 0x7648]);
    expect(preview.cautions.length).toBeGreaterThan(3);
    valueOf(await bench.handle('memory.write', { pad, token: preview.token }));
    const busy = await bench.handle('survey.start', {
      pad,
      stage: null,
      sticks: ['left'],
      steps: ['rest'],
      disturbances: [],
      releases: 3,
      turns: 1,
      sweeps: 1,
      flicks: 1,
      confirmButton: null,
    });
    expect(busy).toMatchObject({ ok: false, problem: { code: 'memory-underway' } });
    const written = await ended(made, pad);
    expect(written).toMatchObject({ end: 'after', problem: null, bytes: [] });
    const again = await bench.handle('memory.write', { pad, token: preview.token });
    expect(again).toMatchObject({ ok: false, problem: { code: 'confirmation-unknown' } });
    const opened = valueOf(await bench.handle('images.open', { image: written.image ?? '', map: null }));
    expect(opened.layers[1]).toMatchObject({ marker: 'valid' });
    expect(opened.layers[1]?.sticks.map(({ mapping }) => mapping)).toEqual([user.left, user.right]);
    expect(await bench.handle('journals.list', {})).toEqual({ ok: true, value: [] });
    expect(await readdir(path.join(made.folder, 'journals', 'over'))).toHaveLength(1);
  });

  it('is what the next survey of the pad says of its layers', async () => {
    const { made, pad } = await begin();
    const plan = await readAndPlan(made, pad);
    await made.bench.handle('memory.allow', { pad, writing: true });
    const { token } = valueOf(await made.bench.handle('memory.preview', { pad, wish: { plan: plan.plan } }));
    valueOf(await made.bench.handle('memory.write', { pad, token }));
    expect((await ended(made, pad)).end).toBe('after');
    await follow(made, pad);
    const wish = surveyOf(pad, { sticks: ['left'], steps: ['rest'], releases: 3 });
    const { survey } = valueOf(await made.bench.handle('survey.start', wish));
    await made.until(() => made.states.at(-1)?.step === 'done');
    const { sticks } = valueOf(await made.bench.handle('surveys.open', { survey }));
    expect(sticks.left).toMatchObject({ current: user.left, layers: { user: user.left } });
    expect(sticks.left?.layers?.factory).not.toEqual(user.left);
  });

  it('does not take a confirmation that is too old', async () => {
    const { made, pad } = await begin();
    const plan = await readAndPlan(made, pad);
    await made.bench.handle('memory.allow', { pad, writing: true });
    const { token } = valueOf(await made.bench.handle('memory.preview', { pad, wish: { plan: plan.plan } }));
    await made.pass(121_000);
    const late = await made.bench.handle('memory.write', { pad, token });
    expect(late).toMatchObject({ ok: false, problem: { code: 'confirmation-expired' } });
  });

  it('rolls a write back that is ended on request', async () => {
    const { made, pad } = await begin();
    const plan = await readAndPlan(made, pad);
    await made.bench.handle('memory.allow', { pad, writing: true });
    const { token } = valueOf(await made.bench.handle('memory.preview', { pad, wish: { plan: plan.plan } }));
    let isAsked = false;
    made.bench.listen('memory.state', (state) => {
      if (!state.writing || isAsked) return;
      isAsked = true;
      void made.bench.handle('memory.abort', { pad });
    });
    valueOf(await made.bench.handle('memory.write', { pad, token }));
    expect(await ended(made, pad)).toMatchObject({ end: 'before', problem: { code: 'memory-aborted' } });
    expect(isAsked).toBe(true);
  });

  it('finds the journal of a write that broke off, shows what it left and ends it', async () => {
    const { made, pad } = await begin();
    const plan = await readAndPlan(made, pad);
    await made.bench.handle('memory.allow', { pad, writing: true });
    const { token } = valueOf(await made.bench.handle('memory.preview', { pad, wish: { plan: plan.plan } }));
    valueOf(await made.bench.handle('memory.write', { pad, token }));
    expect((await ended(made, pad)).end).toBe('after');
    // The journal as a kill would have left it: open, its last line cut off.
    const folder = path.join(made.folder, 'journals');
    const [over = ''] = await readdir(path.join(folder, 'over'));
    const text = await readFile(path.join(folder, 'over', over), 'utf8');
    await writeFile(path.join(folder, over), text.slice(0, -20));
    const [journal] = valueOf(await made.bench.handle('journals.list', {}));
    expect(journal).toMatchObject({ pad, restores: false, map: 'bench-pad-packed' });
    const id = journal?.journal ?? '';
    const blind = await made.bench.handle('memory.preview', { pad, wish: { restore: id } });
    expect(blind).toMatchObject({ ok: false });
    valueOf(await made.bench.handle('memory.show', { pad, journal: id }));
    expect(await ended(made, pad)).toMatchObject({ end: 'after', bytes: [] });
    expect(await made.bench.handle('journals.list', {})).toEqual({ ok: true, value: [] });
  });

  it('refuses the journal of another pad in one sentence', async () => {
    const { made, pad } = await begin();
    const plan = await readAndPlan(made, pad);
    await made.bench.handle('memory.allow', { pad, writing: true });
    const { token } = valueOf(await made.bench.handle('memory.preview', { pad, wish: { plan: plan.plan } }));
    valueOf(await made.bench.handle('memory.write', { pad, token }));
    await ended(made, pad);
    const folder = path.join(made.folder, 'journals');
    const [over = ''] = await readdir(path.join(folder, 'over'));
    const text = await readFile(path.join(folder, 'over', over), 'utf8');
    await writeFile(
      path.join(folder, over),
      text.replace('"serial":"healthy-1"', '"serial":"other"').split('\n').slice(0, 2).join('\n'),
    );
    const [journal] = valueOf(await made.bench.handle('journals.list', {}));
    expect(journal?.pad).toBeNull();
    valueOf(await made.bench.handle('memory.show', { pad, journal: journal?.journal ?? '' }));
    expect(await ended(made, pad)).toMatchObject({ end: 'failed', problem: { code: 'journal-other-pad' } });
  });
});
