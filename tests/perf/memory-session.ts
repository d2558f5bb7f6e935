/**
 * A session that reads 64 KiB twice on a simulated pad against the bare time of its commands: spacing, answer and blocks as the pad takes them.
 * The pad's own time is virtual; what the session itself costs is real and stands on top. Run: `node tests/perf/memory-session.ts`.
 */
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import { bundledProtocols } from '../../core/image/bundled-protocols.ts';
import type { SessionEvent } from '../../core/image/memory-effects.ts';
import { newExchange } from '../../core/image/memory-exchange.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import type { MemoryProtocol } from '../../core/image/memory-protocol.ts';
import { readMemory } from '../../core/image/read-memory.ts';
import { demos } from '../../core/simulate/demos.ts';
import { memoryImage } from '../../core/simulate/memory-image.ts';
import { SimulatedMemory } from '../../core/simulate/simulated-memory.ts';

const RUNS = 5;
const [map] = bundledMaps as [MemoryMap];
const [protocol] = bundledProtocols as [MemoryProtocol];

function once(): { bareMillis: number; ownMillis: number } {
  const image = memoryImage('packed', { factory: demos.healthy.build.firmware, user: null }, 1);
  const memory = new SimulatedMemory({ kind: 'packed', image, seed: 1 });
  let [bareMillis, padMillis] = [0, 0];
  const from = performance.now();
  const session = readMemory(newExchange(protocol), () => map);
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
    figure: 'memory session, 64 KiB read twice, on top of the bare time of its commands (aim: below 10 %)',
    bareMillis,
    ownMillis,
    onTopShare: ownMillis / bareMillis,
  }),
);
