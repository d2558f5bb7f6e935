import { describe, expect, it } from 'vitest';
import type { PadIdentity } from '../../../../core/pad/identity.ts';
import type { PadSource, PadWatcher } from '../../../../electron/bench/pads/pad-source.ts';
import type { EventPayload } from '../../../../shared/contract.ts';
import { follow, makeBench, surveyOf, valueOf, type TestBench } from '../make-bench.ts';
import { ScriptedTransport, sourceOf } from '../scripted-transport.ts';

type Hand = EventPayload<'hand.changed'>;

class PlayedWatcher implements PadWatcher {
  tell: (pads: readonly PadSource[]) => void = () => undefined;
  start(hear: (pads: readonly PadSource[]) => void): void {
    this.tell = hear;
  }
  pause(): void {}
  resume(): void {}
  close(): Promise<void> {
    return Promise.resolve();
  }
}

interface HandBench extends TestBench {
  readonly watcher: PlayedWatcher;
  readonly told: Hand[];
  now(): Promise<Hand>;
  /** Waits until this product is in hand. */
  inHand(product: string | null): Promise<void>;
  handleOf(product: string): Promise<string>;
}

async function setUp(...pads: PadSource[]): Promise<HandBench> {
  const watcher = new PlayedWatcher();
  const test = await makeBench({ watcher, takesPads: true });
  const told: Hand[] = [];
  test.bench.listen('hand.changed', (hand) => told.push(hand));
  watcher.tell(pads);
  const now = async (): Promise<Hand> => valueOf(await test.bench.handle('pads.inHand', {}));
  return {
    ...test,
    watcher,
    told,
    now,
    async inHand(product) {
      await test.until(() => (told.at(-1)?.pad?.identity.product ?? null) === product && told.at(-1)?.gone === false);
    },
    async handleOf(product) {
      const listed = valueOf(await test.bench.handle('pads.list', {}));
      return listed.find(({ identity }) => identity.product === product)?.pad ?? '';
    },
  };
}

function real(name: string, identity: Partial<PadIdentity> = { serial: `${name}-1` }): [ScriptedTransport, PadSource] {
  const transport = new ScriptedTransport(name, identity);
  return [transport, sourceOf(transport)];
}

const HEALTHY = 'Bench pad, healthy';

describe('the pad in hand', () => {
  it('is a real pad before a simulated one, and one that cannot be opened is passed over and said', async () => {
    const [refusing, busy] = real('busy');
    refusing.refusal = { code: 'pad-busy', says: 'Another program holds this pad; close it.' };
    const [, good] = real('good');
    const test = await setUp(busy, good);
    await test.inHand('Scripted good');
    expect(await test.now()).toMatchObject({ problem: { code: 'pad-busy' }, gone: false });
  });

  it('is the simulated pad where there is no real one, until a real one comes', async () => {
    const test = await setUp();
    await test.inHand(HEALTHY);
    const [, source] = real('real');
    test.watcher.tell([source]);
    await test.inHand('Scripted real');
    expect(valueOf(await test.bench.handle('pads.list', {})).map(({ open }) => open)).toEqual([true, false]);
  });

  it('stays the simulated pad that a person took, or that a survey runs on, when a real one comes', async () => {
    const [, source] = real('real');
    const taken = await setUp();
    await taken.inHand(HEALTHY);
    valueOf(await taken.bench.handle('pads.take', { pad: await taken.handleOf(HEALTHY) }));
    taken.watcher.tell([source]);
    await taken.pass(3000);
    expect((await taken.now()).pad?.identity.product).toBe(HEALTHY);

    const surveyed = await setUp();
    await surveyed.inHand(HEALTHY);
    const pad = await surveyed.handleOf(HEALTHY);
    const { survey } = valueOf(await surveyed.bench.handle('survey.start', surveyOf(pad)));
    surveyed.watcher.tell([source]);
    await surveyed.pass(3000);
    expect((await surveyed.now()).pad?.pad).toBe(pad);
    valueOf(await surveyed.bench.handle('survey.say', { survey, what: 'abort' }));
    expect((await surveyed.now()).pad?.pad).toBe(pad);
  });

  it('is told to every page, and another that is taken is told too; the one before is closed', async () => {
    const [first, one] = real('one');
    const [, two] = real('two');
    const test = await setUp(one, two);
    await test.inHand('Scripted one');
    const taken = valueOf(await test.bench.handle('pads.take', { pad: await test.handleOf('Scripted two') }));
    expect(taken).toEqual(test.told.at(-1));
    expect(taken.pad?.identity.serial).toBe('two-1');
    expect(first.closes).toBe(1);
  });

  it('cannot be changed while a survey of it is under way or being started, and can once it is over', async () => {
    const test = await setUp();
    await test.inHand(HEALTHY);
    const pad = await test.handleOf(HEALTHY);
    const other = valueOf(await test.bench.handle('pads.plugDemo', { name: 'worn' })).pad;
    const starting = test.bench.handle('survey.start', surveyOf(pad));
    const twice = test.bench.handle('survey.start', surveyOf(pad));
    const refused = { ok: false, problem: { code: 'survey-underway' } };
    expect(await test.bench.handle('pads.take', { pad: other })).toMatchObject(refused);
    const { survey } = valueOf(await starting);
    expect(await twice).toMatchObject(refused);
    expect(valueOf(await test.bench.handle('surveys.underway', {}))).toMatchObject([{ survey, pad, step: 'ready' }]);
    expect(await test.bench.handle('pads.take', { pad: other })).toMatchObject(refused);
    expect(await test.bench.handle('demo.takeAway', { pad })).toMatchObject(refused);
    valueOf(await test.bench.handle('survey.say', { survey, what: 'abort' }));
    expect(valueOf(await test.bench.handle('surveys.underway', {}))).toEqual([]);
    expect(valueOf(await test.bench.handle('pads.take', { pad: other })).pad?.pad).toBe(other);
  });

  it('cannot be changed while its memory is read', async () => {
    const test = await setUp();
    await test.inHand(HEALTHY);
    const pad = await test.handleOf(HEALTHY);
    const other = valueOf(await test.bench.handle('pads.plugDemo', { name: 'worn' })).pad;
    let isOver = false;
    test.bench.listen('memory.state', ({ end }) => (isOver = end !== null));
    valueOf(await test.bench.handle('memory.read', { pad }));
    const refused = { ok: false, problem: { code: 'memory-underway' } };
    expect(await test.bench.handle('pads.take', { pad: other })).toMatchObject(refused);
    expect(await test.bench.handle('demo.takeAway', { pad })).toMatchObject(refused);
    valueOf(await test.bench.handle('memory.abort', { pad }));
    await test.until(() => isOver);
    expect((await test.bench.handle('pads.take', { pad: other })).ok).toBe(true);
  });

  it('is gone where it leaves, whatever else is there, and in hand again when it returns', async () => {
    const [left, one] = real('one');
    const [, two] = real('two');
    const test = await setUp(one, two);
    await test.inHand('Scripted one');
    left.leave();
    test.watcher.tell([two]);
    expect(await test.now()).toMatchObject({ gone: true, pad: { identity: { serial: 'one-1' } } });
    expect(valueOf(await test.bench.handle('pads.list', {}))).toMatchObject([
      { identity: { product: 'Scripted one' }, open: false, problem: { code: 'pad-gone' } },
      { identity: { product: 'Scripted two' }, problem: null },
    ]);
    await test.pass(10_000);
    expect((await test.now()).gone).toBe(true);
    test.watcher.tell([one, two]);
    await test.inHand('Scripted one');
    expect(left.opens).toBe(2);
  });

  it('is tried again where it returned so quickly that nobody saw it missing, but not for ever', async () => {
    const [left, one] = real('one');
    const test = await setUp(one);
    await test.inHand('Scripted one');
    left.refusal = { code: 'pad-gone', says: 'The pad is no longer there; plug it in again.' };
    left.leave();
    await test.until(() => left.opens === 3);
    left.refusal = null;
    await test.inHand('Scripted one');
    left.refusal = { code: 'pad-gone', says: 'The pad is no longer there; plug it in again.' };
    left.leave();
    await test.pass(60_000);
    expect(left.opens).toBeLessThan(20);
    expect((await test.now()).gone).toBe(true);
    left.refusal = null;
    valueOf(await test.bench.handle('pads.take', { pad: (await test.now()).pad?.pad ?? '' }));
    expect((await test.now()).gone).toBe(false);
  });

  it('is not the like of a pad without a serial number that left, wherever that is plugged in', async () => {
    for (const serial of [null, '00000000']) {
      const [left, one] = real('one', { serial });
      const test = await setUp(one);
      await test.inHand('Scripted one');
      const pad = (await test.now()).pad?.pad;
      left.leave();
      test.watcher.tell([]);
      test.watcher.tell([one]);
      await test.pass(5000);
      expect(await test.now()).toMatchObject({ gone: true, pad: { pad } });
      const [gone, there] = valueOf(await test.bench.handle('pads.list', {}));
      expect(gone).toMatchObject({ pad, problem: { code: 'pad-gone' } });
      expect(there?.pad).not.toBe(pad);
      valueOf(await test.bench.handle('pads.take', { pad: there?.pad ?? '' }));
      expect(await test.now()).toMatchObject({ gone: false, pad: { pad: there?.pad } });
    }
  });

  it('sleeps with the machine and is opened again after it', async () => {
    const [transport, one] = real('one');
    const test = await setUp(one);
    await test.inHand('Scripted one');
    await test.bench.suspend();
    await test.pass(20_000);
    expect(transport).toMatchObject({ opens: 1, closes: 1 });
    test.bench.resume();
    await test.until(() => transport.opens === 2);
    await test.inHand('Scripted one');
  });

  it('says what the hand of a simulated pad does, for whoever comes later', async () => {
    const test = await setUp();
    await test.inHand(HEALTHY);
    await follow(test, await test.handleOf(HEALTHY));
    expect((await test.now()).does).toEqual({ left: 'follow', right: 'follow' });
    valueOf(await test.bench.handle('demo.hand', { pad: await test.handleOf(HEALTHY), stick: 'left', does: 'circle' }));
    expect(test.told.at(-1)?.does).toEqual({ left: 'circle', right: 'follow' });
  });
});

describe('the cable of a simulated pad', () => {
  it('pulled in a survey ends it with what was taken; plugged in again the pad is in hand and streams', async () => {
    const test = await setUp();
    await test.inHand(HEALTHY);
    const pad = await test.handleOf(HEALTHY);
    await follow(test, pad);
    valueOf(await test.bench.handle('survey.start', surveyOf(pad, { releases: 12 })));
    await test.until(() => test.states.at(-1)?.releases.taken === 2);
    valueOf(await test.bench.handle('demo.unplug', { pad }));
    await test.until(() => test.states.at(-1)?.step === 'failed');
    expect(test.states.at(-1)).toMatchObject({ problem: { code: 'pad-gone' } });
    expect(test.states.at(-1)?.prompt).toContain('what was taken is kept');
    expect(await test.now()).toMatchObject({ gone: true, pad: { pad } });
    expect(valueOf(await test.bench.handle('pads.list', {}))).toMatchObject([{ pad, problem: { code: 'pad-gone' } }]);
    const serial = (await test.now()).pad?.identity.serial;
    valueOf(await test.bench.handle('demo.plugIn', { pad }));
    await test.inHand(HEALTHY);
    expect((await test.now()).pad).toMatchObject({ pad, identity: { serial } });
    let batches = 0;
    test.bench.samples(() => (batches += 1));
    await test.until(() => batches > 3);
  });

  it('taken away, the pad is off the list and the first other is in hand, or none', async () => {
    const test = await setUp();
    await test.inHand(HEALTHY);
    const pad = await test.handleOf(HEALTHY);
    const other = valueOf(await test.bench.handle('pads.plugDemo', { name: 'worn' })).pad;
    valueOf(await test.bench.handle('demo.takeAway', { pad }));
    expect(valueOf(await test.bench.handle('pads.list', {})).map((one) => one.pad)).toEqual([other]);
    await test.until(() => test.told.at(-1)?.pad?.pad === other);
    valueOf(await test.bench.handle('demo.takeAway', { pad: other }));
    expect(valueOf(await test.bench.handle('pads.list', {}))).toEqual([]);
    expect((await test.now()).pad).toBeNull();
    test.watcher.tell([]);
    expect(valueOf(await test.bench.handle('pads.list', {}))).toEqual([]);
  });

  it('is none of a real pad', async () => {
    const [, one] = real('one');
    const test = await setUp(one);
    await test.inHand('Scripted one');
    const pad = await test.handleOf('Scripted one');
    for (const call of ['demo.unplug', 'demo.plugIn', 'demo.takeAway'] as const)
      expect(await test.bench.handle(call, { pad })).toMatchObject({ problem: { code: 'pad-not-simulated' } });
    expect((await test.now()).gone).toBe(false);
  });
});
