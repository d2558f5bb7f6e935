/** Remote control of one virtual pad. */
import { fork, type ChildProcess } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { until } from './checks.ts';
import type { CreateOrder, Order } from './virtual-pad.ts';

interface Told {
  readonly done?: number;
  readonly error?: string;
  readonly event?: string;
  readonly [key: string]: unknown;
}

export const PAD: Omit<CreateOrder, 'descriptor'> = {
  name: 'Rig pad',
  serial: 'RIG0001',
  vendorId: 0x1209,
  productId: 0x5711,
  bus: 3,
};

export class RigPad {
  readonly #process: ChildProcess;
  readonly #waiting = new Map<number, (told: Told) => void>();
  readonly #events: Told[] = [];
  #number = 0;

  constructor() {
    this.#process = fork(path.join(import.meta.dirname, 'virtual-pad.js'));
    this.#process.on('message', (told: Told) => {
      if (told.done === undefined) this.#events.push(told);
      else this.#waiting.get(told.done)?.(told);
    });
  }

  async order(order: Order): Promise<void> {
    this.#number += 1;
    const number = this.#number;
    const told = await new Promise<Told>((resolve) => {
      this.#waiting.set(number, resolve);
      this.#process.send({ number, order });
    });
    this.#waiting.delete(number);
    if (told.error !== undefined) throw new Error(told.error);
  }

  /** The next event of that name, taken from the list; undefined when none came in time. */
  event(name: string, millis = 10_000): Promise<Told | undefined> {
    return until(() => {
      const index = this.#events.findIndex((told) => told.event === name);
      return index < 0 ? undefined : this.#events.splice(index, 1)[0];
    }, millis);
  }

  /** Creates the pad and waits for its hidraw node. */
  async plug(descriptor: string, wishes: Partial<CreateOrder> = {}): Promise<string | undefined> {
    const before = new Set(hidrawNodes());
    await this.order({ op: 'create', ...PAD, ...wishes, descriptor });
    await this.event('start');
    return until(() => hidrawNodes().find((node) => !before.has(node)));
  }

  async unplug(): Promise<void> {
    await this.order({ op: 'destroy' });
    await this.event('stop');
  }

  kill(): void {
    this.#process.kill('SIGKILL');
  }

  async quit(): Promise<void> {
    const ended = new Promise((resolve) => this.#process.once('exit', resolve));
    await this.order({ op: 'quit' });
    await ended;
  }
}

export function hidrawNodes(): string[] {
  return readdirSync('/dev')
    .filter((name) => name.startsWith('hidraw'))
    .map((name) => `/dev/${name}`);
}

/** The kernel's own text of its parse of a node's report descriptor. */
export function kernelParseText(node: string): string {
  const device = path.basename(realpathSync(`/sys/class/hidraw/${path.basename(node)}/device`));
  const file = `/sys/kernel/debug/hid/${device}/rdesc`;
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
}

/** All event nodes that the kernel's input layer made of a node's device. */
export function eventNodes(node: string): string[] {
  const device = realpathSync(`/sys/class/hidraw/${path.basename(node)}/device`);
  return readdirSync('/sys/class/input')
    .filter((name) => name.startsWith('event'))
    .filter((name) => realpathSync(`/sys/class/input/${name}`).startsWith(`${device}/`))
    .map((name) => `/dev/input/${name}`);
}
