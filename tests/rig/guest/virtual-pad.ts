/** The device side, a process of its own: owns /dev/uhid and does what it is told over the channel of fork(). */
import { openSync, read, writeSync } from 'node:fs';
import { toHex } from '../../../core/hid/hex.ts';
import { BENCH_BYTES, writeBenchReport } from './bench-pad.ts';
import { PadMemory, type MemoryOrder } from './pad-memory.ts';

export interface CreateOrder {
  readonly descriptor: string;
  readonly name: string;
  readonly serial: string;
  readonly vendorId: number;
  readonly productId: number;
  /** 3 USB, 5 Bluetooth: with others hidapi does not list the node. */
  readonly bus: number;
}

export type Order =
  | ({ readonly op: 'create' } & CreateOrder)
  | { readonly op: 'destroy' }
  | { readonly op: 'send'; readonly hex: string }
  | { readonly op: 'stream'; readonly hz: number; readonly count: number }
  /** From now on the pad has this memory; its commands are counted anew. */
  | ({ readonly op: 'memory' } & MemoryOrder)
  /** Asks what really stands in the memory, past every report. */
  | { readonly op: 'look' }
  | { readonly op: 'quit' };

/** Kinds of struct uhid_event (linux/uhid.h). */
const KIND = {
  destroy: 1,
  start: 2,
  stop: 3,
  output: 6,
  getReport: 9,
  getReply: 10,
  create2: 11,
  input2: 12,
  setReport: 13,
  setReply: 14,
};
/** sizeof(struct uhid_event). */
const EVENT_BYTES = 4380;
/** A reader's ring holds 64 reports: a sender that was late never outruns it in one burst. */
const MOST_IN_A_BURST = 32;

let file = -1;
let alive = false;
let quitting = false;
let feature = Buffer.alloc(32);

const memory = new PadMemory({
  reply: (report) => {
    if (alive) input(report);
  },
  leave: destroy,
});

function say(message: Record<string, unknown>): void {
  process.send?.(message);
}

function create(order: CreateOrder): void {
  const descriptor = Buffer.from(order.descriptor, 'hex');
  const event = Buffer.alloc(280 + descriptor.length); // The kernel fills the rest of a short write with zeros.
  event.writeUInt32LE(KIND.create2, 0);
  event.write(order.name, 4, 127, 'utf8');
  event.write('rig/input0', 132, 63);
  event.write(order.serial, 196, 63);
  event.writeUInt16LE(descriptor.length, 260);
  event.writeUInt16LE(order.bus, 262);
  event.writeUInt32LE(order.vendorId, 264);
  event.writeUInt32LE(order.productId, 268);
  event.writeUInt32LE(0x0100, 272);
  descriptor.copy(event, 280);
  if (file < 0) file = openSync('/dev/uhid', 'r+');
  writeSync(file, event);
  alive = true;
  listen();
}

function destroy(): void {
  const event = Buffer.alloc(4);
  event.writeUInt32LE(KIND.destroy, 0);
  writeSync(file, event);
  alive = false;
}

const inputEvent = Buffer.alloc(6 + 4096);
function input(report: Buffer): void {
  inputEvent.writeUInt32LE(KIND.input2, 0);
  inputEvent.writeUInt16LE(report.length, 4);
  report.copy(inputEvent, 6);
  writeSync(file, inputEvent, 0, 6 + report.length);
}

/** One blocking read in the thread pool; it ends with the kernel's stop, so that none is pending at exit. */
function listen(): void {
  const event = Buffer.alloc(EVENT_BYTES);
  read(file, event, 0, event.length, null, (error) => {
    if (error !== null) {
      say({ event: 'read error', message: error.message });
      return;
    }
    const kind = event.readUInt32LE(0);
    if (kind === KIND.start) say({ event: 'start' });
    if (kind === KIND.output) output(event.subarray(4, 4 + event.readUInt16LE(4100)));
    if (kind === KIND.getReport) answerGet(event.readUInt32LE(4));
    if (kind === KIND.setReport) answerSet(event.readUInt32LE(4), event.subarray(12, 12 + event.readUInt16LE(10)));
    if (kind === KIND.stop) {
      say({ event: 'stop' });
      if (quitting) process.disconnect();
      return;
    }
    listen();
  });
}

/** Told, unless the pad's memory takes it as a command. */
function output(report: Buffer): void {
  if (!memory.take(report)) say({ event: 'output', hex: report.toString('hex') });
}

function answerGet(id: number): void {
  const event = Buffer.alloc(12 + 32);
  event.writeUInt32LE(KIND.getReply, 0);
  event.writeUInt32LE(id, 4);
  event.writeUInt16LE(32, 10);
  feature[0] = 4;
  feature.copy(event, 12);
  writeSync(file, event);
}

function answerSet(id: number, report: Buffer): void {
  feature = Buffer.alloc(32);
  report.copy(feature);
  const event = Buffer.alloc(10);
  event.writeUInt32LE(KIND.setReply, 0);
  event.writeUInt32LE(id, 4);
  writeSync(file, event);
}

/** Sends `count` numbered reports at a rate; late ticks catch up in a short burst. */
function stream(hz: number, count: number): void {
  const report = Buffer.alloc(BENCH_BYTES);
  const interval = 1e9 / hz;
  const start = Number(process.hrtime.bigint());
  let sent = 0;
  function tick(): void {
    let now = Number(process.hrtime.bigint());
    for (let burst = 0; sent < count && start + sent * interval <= now && burst < MOST_IN_A_BURST; burst += 1) {
      writeBenchReport(sent, report);
      report.writeBigUInt64LE(process.hrtime.bigint(), 16);
      input(report);
      sent += 1;
      now = Number(process.hrtime.bigint());
    }
    if (sent < count) setTimeout(tick, Math.max(0, Math.floor((start + sent * interval - now) / 1e6)));
    else say({ event: 'streamed', sent, seconds: (Number(process.hrtime.bigint()) - start) / 1e9 });
  }
  tick();
}

function obey(order: Order): void {
  switch (order.op) {
    case 'create':
      create(order);
      return;
    case 'destroy':
      destroy();
      return;
    case 'send':
      input(Buffer.from(order.hex, 'hex'));
      return;
    case 'stream':
      stream(order.hz, order.count);
      return;
    case 'memory':
      memory.set(order);
      return;
    case 'look':
      say({ event: 'memory', hex: toHex(memory.image), isThere: alive });
      return;
    case 'quit':
      quitting = true;
      if (alive) destroy();
      else process.disconnect();
  }
}

process.on('message', (message: { number: number; order: Order }) => {
  try {
    obey(message.order);
    say({ done: message.number });
  } catch (error) {
    say({ done: message.number, error: String(error) });
  }
});
