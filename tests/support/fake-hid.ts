/** A HID library without hardware: devices come and go, handles can be spoken to and made to fail. */
import type { HidDevice, HidHandle, HidPort } from '../../electron/transport/hid-port.ts';
import type { HidFacts, HidSystem } from '../../electron/transport/hid-system.ts';

type Hear<T> = (heard: T) => void;

export class FakeHandle implements HidHandle {
  /** Everything the transport did with the handle, in order. */
  readonly done: string[] = [];
  /** Answers or failures of the next requests, in order; without one a request succeeds. */
  readonly answers: (Uint8Array | Error)[] = [];
  closeFails = false;
  #onError: Hear<unknown> | null = null;
  #onData: Hear<Uint8Array> | null = null;

  on(event: 'error', hear: Hear<unknown>): this;
  on(event: 'data', hear: Hear<Uint8Array>): this;
  on(event: 'error' | 'data', hear: Hear<never>): this {
    this.done.push(`on ${event}`);
    if (event === 'error') this.#onError = hear as Hear<unknown>;
    else this.#onData = hear as Hear<Uint8Array>;
    return this;
  }

  write(bytes: Buffer): Promise<number> {
    return this.#take(`write ${bytes.toString('hex')}`).then(() => bytes.length);
  }

  sendFeatureReport(bytes: Buffer): Promise<number> {
    return this.#take(`feature ${bytes.toString('hex')}`).then(() => bytes.length);
  }

  getFeatureReport(reportId: number, length: number): Promise<Uint8Array> {
    return this.#take(`read ${reportId} ${length}`).then((answer) => answer ?? Uint8Array.of(reportId));
  }

  close(): Promise<void> {
    this.done.push('close');
    return this.closeFails ? Promise.reject(new Error('hid_close: No such device')) : Promise.resolve();
  }

  /** What the device sends. */
  data(...bytes: number[]): void {
    this.#onData?.(Buffer.from(bytes));
  }

  /** What the library emits when a read fails: a plain string. */
  fail(words: unknown): void {
    this.#onError?.(words);
  }

  async #take(doing: string): Promise<Uint8Array | undefined> {
    this.done.push(`${doing} …`);
    await new Promise((resolve) => setImmediate(resolve));
    this.done.push(doing);
    const answer = this.answers.shift();
    if (answer instanceof Error) throw answer;
    return answer;
  }
}

export class FakeHid implements HidPort {
  list: HidDevice[] = [];
  /** What `devices` or `open` rejects with. */
  listFault: Error | null = null;
  openFault: Error | null = null;
  listed = 0;
  readonly opened: string[] = [];
  readonly handle = new FakeHandle();

  devices(): Promise<readonly HidDevice[]> {
    this.listed += 1;
    return this.listFault === null ? Promise.resolve([...this.list]) : Promise.reject(this.listFault);
  }

  open(path: string): Promise<HidHandle> {
    this.opened.push(path);
    return this.openFault === null ? Promise.resolve(this.handle) : Promise.reject(this.openFault);
  }
}

/** A gamepad of made-up numbers, changed as told. */
export function fakeDevice(change: Partial<HidDevice> = {}): HidDevice {
  return {
    vendorId: 0x1209,
    productId: 0xab01,
    path: '/dev/hidraw3',
    serialNumber: '',
    product: 'Some pad',
    interface: 0,
    usagePage: 1,
    usage: 5,
    ...change,
  };
}

/** A system that knows nothing beside the library, changed as told. */
export function fakeSystem(
  change: { platform?: NodeJS.Platform; facts?: Partial<HidFacts>; refusals?: Record<string, unknown> } = {},
): HidSystem {
  return {
    platform: change.platform ?? 'linux',
    facts: () => Promise.resolve({ descriptor: null, bus: 3, ...change.facts }),
    refusal: (path) => Promise.resolve(change.refusals?.[path] ?? null),
  };
}
