/** A pad with a memory of 1 KiB as the bench meets one: a transport over a memory world, in which one thing may go wrong. */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { bundledProtocols } from '../../core/image/bundled-protocols.ts';
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import type { MemoryProtocol } from '../../core/image/memory-protocol.ts';
import { demoPads } from '../../core/pad/demo-profile.ts';
import type { PadIdentity } from '../../core/pad/identity.ts';
import { done, failed, type Result } from '../../core/result.ts';
import { demos } from '../../core/simulate/demos.ts';
import { memoryImage } from '../../core/simulate/memory-image.ts';
import type { Clock } from '../../electron/bench/time/clock.ts';
import type { PadSource, PadWatcher } from '../../electron/bench/pads/pad-source.ts';
import type { Transport, TransportListener } from '../../electron/bench/pads/transport.ts';
import { MemoryWorld, type Fault } from './memory-world.ts';

const [packedMap] = bundledMaps as [MemoryMap];
const [benchProtocol] = bundledProtocols as [MemoryProtocol];
const user = packedMap.layers.user as NonNullable<MemoryMap['layers']['user']>;
const leftCodec = (user.sticks.left as NonNullable<typeof user.sticks.left>).codec;
const rightCodec = (user.sticks.right as NonNullable<typeof user.sticks.right>).codec;

/** Both layers packed, the user layer behind a marker, and a stretch that changes by itself. */
export const faultMap: MemoryMap = {
  ...packedMap,
  id: 'fault-pad',
  name: 'Pad that things go wrong with',
  proof: 'unproven',
  size: 1024,
  fingerprint: [{ offset: 0, bytes: '53570b01' }],
  layers: {
    factory: {
      marker: null,
      checksum: null,
      sticks: { left: { offset: 0x40, codec: leftCodec }, right: { offset: 0x49, codec: rightCodec } },
    },
    user: {
      marker: { offset: 0x120, valid: '6b1ed427', empty: 'ffffffff' },
      checksum: null,
      sticks: { left: { offset: 0x100, codec: leftCodec }, right: { offset: 0x110, codec: rightCodec } },
    },
  },
  volatile: [{ offset: 0x3f0, length: 16 }],
};

export const faultProtocol: MemoryProtocol = {
  ...benchProtocol,
  id: 'fault-pad-memory',
  name: 'Pad that things go wrong with: memory over reports 16 and 17',
  identify: { ...benchProtocol.identify, kinds: [{ offset: 0, bytes: '53570b', map: faultMap.id }] },
};

/** A byte that a plan changes, and one that none does. */
export const victim = { inPlan: 0x103, elsewhere: 0x201 };

/** Numbers of the pad of these tests, as a mapping file says it. */
export function fromPad(serial: string | null, unit: string | null = null) {
  return { file: { ...demoPads.sensor, serial, unit }, domain: 'sensor' as const };
}

/** What the plan of these tests stores in the user layer. */
export const wanted = {
  left: { x: { min: 700, centre: 2100, max: 3300 }, y: { min: 800, centre: 2000, max: 3200 } },
  right: { x: { min: 820, centre: 2040, max: 3260 }, y: { min: 850, centre: 2055, max: 3260 } },
};

/** The command that the first block goes out with: identify, battery and the whole memory come before it. */
export const FIRST_BLOCK = 2 + Math.ceil(faultMap.size / faultProtocol.read.block);

/** Erased user layer, factory numbers, and what looks like a program. */
export function faultImage(): Uint8Array {
  const factory = demos.healthy.build.firmware;
  const packed = memoryImage('packed', { factory, user: null }, 1);
  const image = memoryImage('words', { factory, user: null }, 1).slice(0, faultMap.size);
  image.fill(0xff, 0x100, 0x130);
  image.set(packed.subarray(0x2c10, 0x2c19), 0x40);
  image.set(packed.subarray(0x2c30, 0x2c39), 0x49);
  return image;
}

const COUNTER_AT = 0x3f0;
const REPLY_MILLIS = 1;
/** Later than the protocol waits for a reply, sooner than it asks again. */
const LATE_MILLIS = { read: 150, write: 450 } as const;
const WRITE_CODE = 3;

export interface FaultPadOptions {
  readonly clock: Clock;
  readonly image: Uint8Array;
  readonly serial?: string | null;
  readonly key?: string;
  readonly seed?: number;
}

export class FaultPad implements Transport {
  readonly key: string;
  readonly lockKey: string;
  readonly identity: PadIdentity;
  readonly descriptor = null;
  readonly #clock: Clock;
  readonly #seed: number;
  world: MemoryWorld;
  /** Called where the technician ends the session. */
  onAbort: () => void = () => undefined;
  /** From this command on the program is dead: `after` lets the pad take that one still. */
  killAt: { readonly command: number; readonly after: boolean } | null = null;
  /** Told of each command by its number, before the pad takes it and after. */
  onCommand: (command: number, when: 'before' | 'after') => void = () => undefined;
  #listener: TransportListener | null = null;
  #isThere = true;
  /** Commands since the last fault was set. */
  #commands = 0;

  constructor({ clock, image, serial = 'fault-1', key = 'fault-pad', seed = 1 }: FaultPadOptions) {
    this.key = key;
    this.lockKey = key;
    this.identity = { ...demoPads.sensor, product: 'Fault pad', serial, transport: 'usb' };
    this.#clock = clock;
    this.#seed = seed;
    this.world = new MemoryWorld('words', image, null, victim, seed);
  }

  get image(): Uint8Array {
    return this.world.memory.image;
  }

  /** Commands are counted from here. */
  arm(fault: Fault | null): void {
    const { battery, image } = this.world.memory;
    this.world = new MemoryWorld('words', image, fault, victim, this.#seed);
    this.world.memory.battery = battery;
    this.#commands = 0;
  }

  get commands(): number {
    return this.#commands;
  }

  /** Whole and connected again; it must be opened anew where it had left. */
  mend(): void {
    this.#isThere = true;
    this.killAt = null;
    this.arm(null);
  }

  leave(): void {
    const listener = this.#listener;
    this.#isThere = false;
    this.#listener = null;
    listener?.lost(gone().problem);
  }

  open(listener: TransportListener): Promise<Result<void>> {
    if (!this.#isThere) return Promise.resolve(gone());
    this.#listener = listener;
    return Promise.resolve(done(undefined));
  }

  sendOutput(reportId: number, payload: Uint8Array): Promise<Result<void>> {
    return Promise.resolve(this.#take(reportId, payload));
  }

  sendFeature(): Promise<Result<void>> {
    return Promise.resolve(failed('pad-protocol', 'This pad has no feature reports.'));
  }

  readFeature(): Promise<Result<Uint8Array>> {
    return Promise.resolve(failed('pad-protocol', 'This pad has no feature reports.'));
  }

  close(): Promise<void> {
    this.#listener = null;
    return Promise.resolve();
  }

  #take(reportId: number, payload: Uint8Array): Result<void> {
    if (this.#listener === null) return gone();
    const at = this.#commands;
    this.#commands += 1;
    const { killAt } = this;
    if (killAt !== null && at >= killAt.command + (killAt.after ? 1 : 0)) return done(undefined);
    this.image[COUNTER_AT] = ((this.image[COUNTER_AT] ?? 0) + 1) & 0xff;
    this.onCommand(at, 'before');
    let event = this.world.send(reportId, payload);
    if (event.is === 'abort') {
      this.onAbort();
      event = this.world.send(reportId, payload);
    }
    this.onCommand(at, 'after');
    if (event.is === 'lost') this.leave();
    if (killAt !== null && at >= killAt.command) return done(undefined);
    if (event.is === 'reply') this.#tell(event.payload, REPLY_MILLIS);
    const late = payload[0] === WRITE_CODE ? LATE_MILLIS.write : LATE_MILLIS.read;
    for (const stray of this.world.takeStrays()) this.#tell(stray, event.is === 'reply' ? REPLY_MILLIS + 0.1 : late);
    return done(undefined);
  }

  #tell(payload: Uint8Array, millis: number): void {
    const listener = this.#listener;
    this.#clock.after(millis, () => {
      if (this.#listener === listener) listener?.report(this.#clock.micros(), faultProtocol.reply.reportId, payload);
    });
  }
}

function gone(): ReturnType<typeof failed> {
  return failed('pad-gone', 'Fault pad is no longer there; plug it in again.');
}

/** Puts map and protocol of these pads into a data folder. */
export async function keepFiles(folder: string): Promise<void> {
  for (const [drawer, value] of [
    ['maps', faultMap],
    ['protocols', faultProtocol],
  ] as const) {
    await mkdir(path.join(folder, drawer), { recursive: true });
    await writeFile(path.join(folder, drawer, `${value.id}.json`), JSON.stringify(value));
  }
}

/** Tells these pads, and no others ever. */
export function watcherOf(...pads: readonly FaultPad[]): PadWatcher {
  const sources = pads.map((transport): PadSource => ({ transport, problem: null, rule: null, hand: null }));
  return {
    start: (hear) => hear(sources),
    pause: () => undefined,
    resume: () => undefined,
    close: () => Promise.resolve(),
  };
}
