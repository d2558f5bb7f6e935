/** Memory sessions against the virtual pad: the product's driver over its HID transport, both ends of a real node. */
import { readHex, toHex } from '../../../core/hid/hex.ts';
import { isReply } from '../../../core/image/memory-command.ts';
import type { JournalStep, SessionTally, Steps } from '../../../core/image/memory-effects.ts';
import { newExchange, type Exchange } from '../../../core/image/memory-exchange.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { demoPads } from '../../../core/pad/demo-profile.ts';
import { done } from '../../../core/result.ts';
import { memoryDescriptor } from '../../../core/simulate/simulated-memory.ts';
import { systemClock } from '../../../electron/bench/time/clock.ts';
import { MemoryDriver } from '../../../electron/bench/memory/memory-driver.ts';
import type { FoundPad } from '../../../electron/transport/find-pads.ts';
import type { Fault } from '../../support/memory-world.ts';
import { BENCH_DESCRIPTOR } from './bench-pad.ts';
import { listed, transportOf } from './bench-ports.ts';
import type { RigPad } from './rig-pad.ts';

export interface Played<T> {
  readonly value: T;
  readonly tally: SessionTally;
  readonly journal: readonly JournalStep[];
  readonly kept: readonly Uint8Array[];
  /** Input reports that were none of the memory's. */
  readonly others: number;
  readonly millis: number;
}

export class MemoryBench {
  readonly #pad: RigPad;
  sessions = 0;

  constructor(pad: RigPad) {
    this.#pad = pad;
  }

  /** The pad, with sticks and a memory, on a node of its own. */
  async plug(): Promise<FoundPad> {
    await this.#pad.plug(BENCH_DESCRIPTOR + toHex(memoryDescriptor), demoPads.sensor);
    const [found] = await listed();
    if (found === undefined) throw new Error('The pad with a memory is not listed.');
    return found;
  }

  /** `image` null: the memory as it stands. */
  setMemory(image: Uint8Array | null, fault: Fault | null): Promise<void> {
    return this.#pad.order({ op: 'memory', kind: 'words', image: image === null ? null : toHex(image), fault });
  }

  /** What really stands in the pad; one that left in the session is plugged in again. */
  async look(): Promise<Uint8Array> {
    await this.#pad.order({ op: 'look' });
    const told = await this.#pad.event('memory');
    const image = readHex(String(told?.['hex']));
    if (!image.ok) throw new Error(image.problem.says);
    if (told?.['isThere'] === false) {
      await this.#pad.event('stop');
      await this.plug();
    }
    return image.value;
  }

  async play<T>(protocol: MemoryProtocol, session: (exchange: Exchange) => Steps<T>): Promise<Played<T>> {
    const [found] = await listed();
    if (found === undefined) throw new Error('There is no pad to play a memory session with.');
    const transport = await transportOf(found);
    const exchange = newExchange(protocol);
    const journal: JournalStep[] = [];
    const kept: Uint8Array[] = [];
    let others = 0;
    const driver = new MemoryDriver({
      clock: systemClock,
      send: (reportId, payload) => transport.sendOutput(reportId, payload),
      keep: (image) => Promise.resolve(done(kept.push(Uint8Array.from(image)))),
      journal: (entry) => Promise.resolve(done(journal.push(entry))),
      moved: () => undefined,
    });
    const opened = await transport.open({
      report: (_, reportId, payload) => {
        if (isReply(protocol, reportId, payload)) driver.reply(payload);
        else others += 1;
      },
      gap: () => undefined,
      lost: (problem) => driver.lost(problem),
    });
    if (!opened.ok) throw new Error(opened.problem.says);
    const start = performance.now();
    const value = await driver.run(session(exchange));
    const millis = Math.round(performance.now() - start);
    await transport.close();
    this.sessions += 1;
    return { value, tally: exchange.tally, journal, kept, others, millis };
  }
}
