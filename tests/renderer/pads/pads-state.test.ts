import { describe, expect, test } from 'vitest';
import { done, failed } from '../../../core/result.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import { ByArrival } from '../../../core/pad/by-arrival.ts';
import { LiveReadings } from '../../../renderer/pads/live-readings.ts';
import type { PadDetails, PadSummary } from '../../../renderer/pads/pad-words.ts';
import { PadsState } from '../../../renderer/pads/pads-state.svelte.ts';
import type { EventPayload } from '../../../shared/contract.ts';
import { SampleBatchWriter } from '../../../shared/sample-batch.ts';
import { scriptedBench, type ScriptedBench } from '../support/scripted-bench.ts';
import { smallReader } from '../support/small-pad.ts';

type Hand = EventPayload<'hand.changed'>;

function summary(pad: string, transport: 'usb' | 'simulated', problem: PadSummary['problem'] = null): PadSummary {
  const identity = { vendorId: 1, productId: 2, product: `Pad ${pad}`, serial: null, transport };
  return { pad, identity, open: false, problem, rule: null, unit: null };
}

function details(pad: string, transport: 'usb' | 'simulated'): PadDetails {
  const { identity } = summary(pad, transport);
  return { pad, identity, domain: 'reported', profile: null, descriptor: null };
}

function inHand(pad: PadDetails | null, more: Partial<Hand> = {}): Hand {
  return { pad, unit: null, gone: false, does: {}, problem: null, ...more };
}

function bench(list: readonly PadSummary[], hand = inHand(details('r1', 'usb'))): ScriptedBench {
  return scriptedBench({
    'pads.list': () => done([...list]),
    'pads.demos': () => done([{ name: 'worn', says: 'A worn track.' }]),
    'pads.inHand': () => done(hand),
    'pads.take': ({ pad }) => done(inHand(details(pad, pad.startsWith('s') ? 'simulated' : 'usb'))),
    'demo.hand': () => done({}),
    'pads.plugDemo': () => done(summary('s9', 'simulated')),
  });
}

async function following(from: ScriptedBench): Promise<PadsState> {
  const pads = new PadsState(from, () => done(new LiveReadings(new ByArrival(() => smallReader), createReadingSlot())));
  await pads.follow(() => 500);
  return pads;
}

function batchOf(pad: string, x: number): Uint8Array {
  const writer = new SampleBatchWriter(pad);
  writer.report(1000, 1, Uint8Array.of(x, 7));
  return writer.take();
}

describe('the pads', () => {
  test('the one in hand is what the bench says, before this page came and after', async () => {
    const from = bench([summary('s1', 'simulated'), summary('r1', 'usb'), summary('r2', 'usb')]);
    const pads = await following(from);
    expect(pads.inHand?.pad).toBe('r1');
    expect(from.asked.map(({ name }) => name)).not.toContain('pads.take');
    from.tell('pads.changed', [summary('r2', 'usb')]);
    expect(pads.inHand?.pad).toBe('r1');
    from.tell('hand.changed', inHand(details('r2', 'usb')));
    expect(pads.inHand?.pad).toBe('r2');
    from.tell('hand.changed', inHand(null));
    expect(pads).toMatchObject({ inHand: null, live: null, layout: null, owner: null, name: null });
  });

  test('taking another pad asks the bench, and a refusal leaves the one in hand where it is and says why', async () => {
    const from = bench([summary('r1', 'usb'), summary('r2', 'usb')]);
    const pads = await following(from);
    from.answers['pads.take'] = () => failed('survey-underway', 'A survey of this pad is under way; end it first.');
    await pads.take('r2');
    expect(pads.inHand?.pad).toBe('r1');
    expect(pads.problem?.code).toBe('survey-underway');
    delete from.answers['pads.take'];
    from.answers['pads.take'] = ({ pad }) => done(inHand(details(pad, 'usb')));
    await pads.take('r2');
    expect(pads.inHand?.pad).toBe('r2');
    expect(pads.problem).toBeNull();
  });

  test('one that is gone keeps its last readings, and begins anew when it returns', async () => {
    const from = bench([summary('r1', 'usb')]);
    const pads = await following(from);
    from.send(batchOf('r1', 42));
    from.tell('hand.changed', inHand(details('r1', 'usb'), { gone: true }));
    expect(pads.gone).toBe(true);
    expect(pads.live?.ring.newest(0)).toBe(42);
    from.tell('hand.changed', inHand(details('r1', 'usb')));
    expect(pads.live?.ring.taken).toBe(0);
  });

  test('is called as in its list, and known by its unit too', async () => {
    const pads = await following(
      bench([summary('r2', 'usb'), summary('r1', 'usb')], inHand(details('r1', 'usb'), { unit: '0a1b' })),
    );
    expect(pads.name?.says).toBe('Pad r1 · no serial number');
    expect(pads.owner).toEqual({ vendorId: 1, productId: 2, serial: null, unit: '0a1b' });
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
    const from = bench([summary('s1', 'simulated')], inHand(details('s1', 'simulated')));
    const pads = await following(from);
    await pads.followSurvey(true);
    const hands = from.asked.filter((one) => one.name === 'demo.hand').map((one) => one.request);
    expect(hands).toEqual([{ pad: 's1', stick: 'left', does: 'follow' }]);
    expect(pads.follows).toBe(false);
    from.tell('hand.changed', inHand(details('s1', 'simulated'), { does: { left: 'follow' } }));
    expect(pads.follows).toBe(true);
    expect([pads.movementOf('left'), pads.movementOf('right')]).toEqual(['follow', 'rest']);
  });

  test('a simulated pad that is plugged in is taken in hand', async () => {
    const pads = await following(bench([summary('s1', 'simulated')]));
    await pads.plugDemo('worn');
    expect(pads.inHand?.pad).toBe('s9');
  });
});
