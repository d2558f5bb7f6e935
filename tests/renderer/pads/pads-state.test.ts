import { describe, expect, test } from 'vitest';
import { done, failed } from '../../../core/result.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import { LiveReadings } from '../../../renderer/pads/live-readings.ts';
import type { PadDetails, PadSummary } from '../../../renderer/pads/pad-words.ts';
import { PadsState } from '../../../renderer/pads/pads-state.svelte.ts';
import { SampleBatchWriter } from '../../../shared/sample-batch.ts';
import { scriptedBench, type ScriptedBench } from '../support/scripted-bench.ts';
import { smallReader } from '../support/small-pad.ts';

function summary(pad: string, transport: 'usb' | 'simulated', problem: PadSummary['problem'] = null): PadSummary {
  const identity = { vendorId: 1, productId: 2, product: `Pad ${pad}`, serial: null, transport };
  return { pad, identity, open: false, problem, rule: null, unit: null };
}

function details(pad: string, transport: 'usb' | 'simulated'): PadDetails {
  const { identity } = summary(pad, transport);
  return { pad, identity, domain: 'reported', profile: null, descriptor: null };
}

function bench(list: readonly PadSummary[]): ScriptedBench {
  return scriptedBench({
    'pads.list': () => done([...list]),
    'pads.demos': () => done([{ name: 'worn', says: 'A worn track.' }]),
    'pads.open': ({ pad }) => done(details(pad, pad.startsWith('s') ? 'simulated' : 'usb')),
    'pads.close': () => done({}),
    'demo.hand': () => done({}),
    'pads.plugDemo': () => done(summary('s9', 'simulated')),
  });
}

async function following(from: ScriptedBench): Promise<PadsState> {
  const pads = new PadsState(from, () => done(new LiveReadings(() => smallReader, createReadingSlot())));
  await pads.follow(() => 500);
  return pads;
}

function batchOf(pad: string, x: number): Uint8Array {
  const writer = new SampleBatchWriter(pad);
  writer.report(1000, 1, Uint8Array.of(x, 7));
  return writer.take();
}

describe('the pads', () => {
  test('a real pad that can be opened is taken in hand before a simulated one', async () => {
    const pads = await following(
      bench([
        summary('s1', 'simulated'),
        summary('r1', 'usb', { code: 'pad-no-permission', says: 'Add the rule.' }),
        summary('r2', 'usb'),
      ]),
    );
    expect(pads.inHand?.pad).toBe('r2');
    expect(pads.simulated).toBe(false);
  });

  test('without a real pad the simulated one is taken, and when it goes a real one takes its place', async () => {
    const from = bench([summary('s1', 'simulated')]);
    const pads = await following(from);
    expect(pads.inHand?.pad).toBe('s1');
    from.tell('pads.changed', [summary('r1', 'usb')]);
    await expect.poll(() => pads.inHand?.pad).toBe('r1');
  });

  test('taking another pad closes the one before', async () => {
    const from = bench([summary('r1', 'usb'), summary('r2', 'usb')]);
    const pads = await following(from);
    await pads.take('r2');
    expect(pads.inHand?.pad).toBe('r2');
    expect(from.asked.at(-1)).toEqual({ name: 'pads.close', request: { pad: 'r1' } });
  });

  test('a pad that cannot be opened leaves the one in hand where it is and says why', async () => {
    const from = bench([summary('r1', 'usb'), summary('r2', 'usb')]);
    const pads = await following(from);
    from.answers['pads.open'] = () => failed('pad-busy', 'Another program holds this pad; close it.');
    await pads.take('r2');
    expect(pads.inHand?.pad).toBe('r1');
    expect(pads.problem?.code).toBe('pad-busy');
  });

  test('decodes the batches of the pad in hand and leaves those of others', async () => {
    const from = bench([summary('r1', 'usb')]);
    const pads = await following(from);
    from.send(batchOf('r2', 11));
    expect(pads.live?.ring.taken).toBe(0);
    from.send(batchOf('r1', 42));
    expect(pads.live?.ring.newest(0)).toBe(42);
    expect(pads.live?.arrivedMillis).toBe(500);
    expect(pads.layout?.domain).toBe('reported');
  });

  test('a damaged batch is told and does not stop the next one', async () => {
    const from = bench([summary('r1', 'usb')]);
    const pads = await following(from);
    from.send(batchOf('r1', 1).slice(0, -1));
    expect(pads.live?.problem?.code).toBe('batch-cut');
    from.send(batchOf('r1', 5));
    expect(pads.live?.ring.newest(0)).toBe(5);
  });

  test('a pad that went away stays in hand, so that its last readings can still be seen', async () => {
    const from = bench([summary('r1', 'usb')]);
    const pads = await following(from);
    from.tell('pads.changed', []);
    expect(pads.inHand?.pad).toBe('r1');
    expect(pads.summary).toBeNull();
  });

  test('health is kept for the pad in hand only', async () => {
    const from = bench([summary('r1', 'usb')]);
    const pads = await following(from);
    const health = { state: 'streaming', rateHz: 250, gaps: 0, lost: null, loopDelayMillis: 0, problem: null } as const;
    from.tell('pad.health', { pad: 'r2', ...health });
    expect(pads.health).toBeNull();
    from.tell('pad.health', { pad: 'r1', ...health });
    expect(pads.health?.rateHz).toBe(250);
  });

  test('the demonstration hand follows a survey with every stick that the pad has', async () => {
    const from = bench([summary('s1', 'simulated')]);
    const pads = await following(from);
    await pads.followSurvey(true);
    const hands = from.asked.filter((one) => one.name === 'demo.hand').map((one) => one.request);
    expect(hands).toEqual([{ pad: 's1', stick: 'left', does: 'follow' }]);
    expect(pads.movement).toBe('follow');
  });

  test('a simulated pad that is plugged in is taken in hand', async () => {
    const pads = await following(bench([summary('s1', 'simulated')]));
    await pads.plugDemo('worn');
    expect(pads.inHand?.pad).toBe('s9');
  });
});
