/** A bench with a pad that things go wrong with, and the calls of a technician at it. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import type { PadLock } from '../../../electron/bench/pads/pad-lock-port.ts';
import { VirtualClock } from '../../../electron/bench/time/virtual-clock.ts';
import type { EventPayload, Request } from '../../../shared/contract.ts';
import {
  FaultPad,
  faultImage,
  faultMap,
  FIRST_BLOCK,
  fromPad,
  keepFiles,
  wanted,
  watcherOf,
  type FaultPadOptions,
} from '../../support/fault-pad.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';
import { makeBench, valueOf, type TestBench } from './make-bench.ts';

export type MemoryState = EventPayload<'memory.state'>;

export interface FaultBench {
  readonly made: TestBench;
  readonly pads: readonly FaultPad[];
  /** The first pad and its handle. */
  readonly pad: FaultPad;
  readonly handle: string;
  /** Opens a pad, again where it had left, and answers with its handle. */
  open(pad: FaultPad): Promise<string>;
  /** One timer after the other, with a turn for the disk between them. */
  until(holds: () => boolean): Promise<void>;
  /** Plays a session to its end. */
  ended(handle: string): Promise<MemoryState>;
}

export interface FaultBenchOptions {
  readonly folder?: string;
  readonly lock?: PadLock;
  /** One pad unless told otherwise. */
  readonly pads?: readonly Omit<FaultPadOptions, 'clock'>[];
}

export async function faultBench(options: FaultBenchOptions = {}): Promise<FaultBench> {
  const folder = options.folder ?? (await temporaryFolder());
  await keepFiles(folder);
  const clock = new VirtualClock(new Date('2024-05-01T10:00:00Z'));
  const pads = (options.pads ?? [{ image: faultImage() }]).map((one) => new FaultPad({ ...one, clock }));
  const lock = options.lock === undefined ? {} : { lock: options.lock };
  const made = await makeBench({ folder, clock, watcher: watcherOf(...pads), ...lock });
  const { bench } = made;
  const until = async (holds: () => boolean): Promise<void> => {
    while (!holds()) {
      let calls = 0;
      await clock.run(() => holds() || (calls += 1) > 1);
      await nextTurn();
    }
  };
  const open = async (pad: FaultPad): Promise<string> => {
    const listed = valueOf(await bench.handle('pads.list', {}));
    const handle = listed[pads.indexOf(pad)]?.pad ?? '';
    valueOf(await bench.handle('pads.open', { pad: handle }));
    return handle;
  };
  const [pad] = pads as [FaultPad];
  return {
    made,
    pads,
    pad,
    handle: await open(pad),
    open,
    until,
    async ended(handle) {
      let last: MemoryState | null = null;
      const stop = bench.listen('memory.state', (state) => {
        if (state.pad === handle && state.end !== null) last = state;
      });
      await until(() => last !== null);
      stop();
      return last as unknown as MemoryState;
    },
  };
}

export async function read(bench: FaultBench, pad: string): Promise<MemoryState> {
  valueOf(await bench.made.bench.handle('memory.read', { pad }));
  return bench.ended(pad);
}

/** Looks at what a journal's write left. */
export async function show(bench: FaultBench, pad: string, journal: string): Promise<MemoryState> {
  valueOf(await bench.made.bench.handle('memory.show', { pad, journal }));
  return bench.ended(pad);
}

/** The wish to store the wanted numbers in the pad that was just read, with writing switched on for it. */
export async function planned(bench: FaultBench, pad: string): Promise<Request<'memory.preview'>['wish']> {
  const { made } = bench;
  const { image } = await read(bench, pad);
  const listed = valueOf(await made.bench.handle('pads.list', {})).find((one) => one.pad === pad);
  const from = fromPad(listed?.identity.serial ?? null, listed?.unit ?? null);
  const wish = { store: { layer: 'user' as const, mappings: wanted, from } };
  const plan = valueOf(await made.bench.handle('images.plan', { image: image ?? '', map: faultMap.id, wish }));
  valueOf(await made.bench.handle('memory.allow', { pad, writing: true }));
  return { plan: plan.plan };
}

/** Confirms what was wished for, and begins it. */
export async function begin(
  { made }: Pick<FaultBench, 'made'>,
  pad: string,
  wish: Request<'memory.preview'>['wish'],
): Promise<void> {
  const { token } = valueOf(await made.bench.handle('memory.preview', { pad, wish }));
  valueOf(await made.bench.handle('memory.write', { pad, token }));
}

export async function write(
  bench: FaultBench,
  pad: string,
  wish: Request<'memory.preview'>['wish'],
): Promise<MemoryState> {
  await begin(bench, pad, wish);
  return bench.ended(pad);
}

/** A write that is broken off by the pad's leaving in the middle of its first block; the pad is there again and open. */
export async function breakOff(bench: FaultBench, pad: FaultPad = bench.pad): Promise<string> {
  const handle = await bench.open(pad);
  const wish = await planned(bench, handle);
  // The readings before the first block are as many for every pad of this memory.
  pad.arm({ kind: 'power lost in a block', k: FIRST_BLOCK });
  const end = await write(bench, handle, wish);
  if (end.end !== 'differs') throw new Error('The write was to break off.');
  pad.mend();
  return bench.open(pad);
}

/** Handles of the journals that are open. */
export async function openJournals({ made }: Pick<FaultBench, 'made'>): Promise<string[]> {
  return valueOf(await made.bench.handle('journals.list', {})).map(({ journal }) => journal);
}
