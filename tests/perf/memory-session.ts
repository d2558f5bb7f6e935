/**
 * A whole session through the bench (read, plan, confirm, journal, write, read back, compare) with its real files, and one that reads 48 KiB twice on a simulated pad against the bare time of its commands: spacing, answer and blocks as the pad takes them.
 * The pad's own time is virtual; what the session itself costs is real and stands on top. Run: `node tests/perf/memory-session.ts`.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import { bundledProtocols } from '../../core/image/bundled-protocols.ts';
import type { SessionEvent } from '../../core/image/memory-effects.ts';
import { newExchange } from '../../core/image/memory-exchange.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import type { MemoryProtocol } from '../../core/image/memory-protocol.ts';
import { readMemory } from '../../core/image/read-memory.ts';
import { done } from '../../core/result.ts';
import { demos } from '../../core/simulate/demos.ts';
import { memoryImage } from '../../core/simulate/memory-image.ts';
import { SimulatedMemory } from '../../core/simulate/simulated-memory.ts';
import { fromPad } from '../support/fault-pad.ts';
import { bothMappings } from '../support/make-image.ts';
import type { EventPayload } from '../../shared/contract.ts';
import { newBench, openFirst, valueOf } from '../electron/bench/make-bench.ts';

const RUNS = 5;
/** Of the simulated pad for a command that reads; a block takes it longer. */
const READ_MILLIS = 0.7;
const [map] = bundledMaps as [MemoryMap];
const [protocol] = bundledProtocols as [MemoryProtocol];

function once(): { bareMillis: number; ownMillis: number } {
  const image = memoryImage('packed', { factory: demos.healthy.build.firmware, user: null }, 1);
  const memory = new SimulatedMemory({ kind: 'packed', image, seed: 1 });
  let [bareMillis, padMillis] = [0, 0];
  const from = performance.now();
  const session = readMemory(newExchange(protocol), () => done(map));
  for (let step = session.next(); step.done !== true;) {
    let event: SessionEvent = { is: 'kept' };
    if (step.value.do === 'wait') {
      bareMillis += step.value.millis;
      event = { is: 'waited' };
    } else if (step.value.do === 'send') {
      const began = performance.now();
      const answer = memory.take(step.value.reportId, step.value.payload);
      padMillis += performance.now() - began;
      bareMillis += (answer?.afterMicros ?? 0) / 1000;
      event = answer === null ? { is: 'timeout' } : { is: 'reply', payload: answer.payload };
    }
    step = session.next(event);
  }
  return { bareMillis, ownMillis: performance.now() - from - padMillis };
}

const runs = Array.from({ length: RUNS }, once).toSorted((a, b) => a.ownMillis - b.ownMillis);
const { bareMillis, ownMillis } = runs[RUNS >> 1] ?? { bareMillis: Number.NaN, ownMillis: Number.NaN };
console.log(
  JSON.stringify({
    figure: 'memory session, 48 KiB read twice, on top of the bare time of its commands (aim: below 10 %)',
    bareMillis,
    ownMillis,
    onTopShare: ownMillis / bareMillis,
  }),
);

/** Milliseconds that the pad takes for the commands of a session, and that the program took, without what the pad's stream costs in as much of its time. */
async function wholeSession(): Promise<{ bareMillis: number; ownMillis: number }> {
  const folder = await mkdtemp(path.join(tmpdir(), 'stickwright-perf-'));
  const { bench, ...made } = newBench(folder);
  const pad = await openFirst({ bench, ...made });
  const ended = async (): Promise<EventPayload<'memory.state'>> => {
    let last: EventPayload<'memory.state'> | null = null;
    const stop = bench.listen('memory.state', (state) => (last = state.end === null ? null : state));
    await made.until(() => last !== null);
    stop();
    return last as unknown as EventPayload<'memory.state'>;
  };
  const [startMillis, began] = [performance.now(), made.clock.micros()];
  valueOf(await bench.handle('memory.read', { pad }));
  const read = await ended();
  const wish = { store: { layer: 'user' as const, mappings: bothMappings, from: fromPad('healthy-1') } };
  const plan = valueOf(await bench.handle('images.plan', { image: read.image ?? '', map: map.id, wish }));
  valueOf(await bench.handle('memory.allow', { pad, writing: true }));
  const { token } = valueOf(await bench.handle('memory.preview', { pad, wish: { plan: plan.plan } }));
  valueOf(await bench.handle('memory.write', { pad, token }));
  const written = await ended();
  const [wallMillis, elapsedMillis] = [performance.now() - startMillis, (made.clock.micros() - began) / 1000];
  const streamFrom = performance.now();
  await made.pass(elapsedMillis);
  const ownMillis = wallMillis - (performance.now() - streamFrom);
  if (written.end !== 'after') throw new Error(`The session ended ${String(written.end)}.`);
  await bench.close();
  await rm(folder, { recursive: true, force: true });
  return { bareMillis: (read.done + written.done) * (READ_MILLIS + protocol.spacingMillis), ownMillis };
}

const wholes: { bareMillis: number; ownMillis: number }[] = [];
for (let run = 0; run < RUNS; run += 1) wholes.push(await wholeSession());
const whole = wholes.toSorted((a, b) => a.ownMillis - b.ownMillis)[RUNS >> 1] ?? { bareMillis: 0, ownMillis: 0 };
console.log(
  JSON.stringify({
    figure: 'whole session of 48 KiB through the bench, its files with it (aim: below 10 % on top)',
    ...whole,
    onTopShare: whole.ownMillis / whole.bareMillis,
  }),
);
