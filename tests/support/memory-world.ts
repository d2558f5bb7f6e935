/** A pad, a cable, a disk and a program in one: plays a memory session step by step and lets one thing go wrong at step k. */
import { bundledProtocols } from '../../core/image/bundled-protocols.ts';
import type { JournalStep, SessionEffect, SessionEvent, Steps } from '../../core/image/memory-effects.ts';
import type { MemoryProtocol } from '../../core/image/memory-protocol.ts';
import { checksum, type MemoryKind } from '../../core/simulate/memory-image.ts';
import { SimulatedMemory } from '../../core/simulate/simulated-memory.ts';

export const [protocol] = bundledProtocols as [MemoryProtocol];

/**
 * `k` counts commands from 0, or for the disk and the kill all effects. A fault is one event, unless its name says `always`:
 * then it stays from step k on.
 */
export const faultKinds = [
  'command lost',
  'reply lost',
  'reply lost always',
  'short reply',
  'stale reply',
  'reply late',
  'bit flip in the reply',
  'bit flip in the reply always',
  'bit flip in the command',
  'write refused',
  'write refused always',
  'write only said',
  'write only said always',
  'unplugged before',
  'unplugged after',
  'power lost in a block',
  'disk full',
  'disk full always',
  'killed before',
  'killed after',
  'second program writes in the plan',
  'second program writes elsewhere',
  'second program asks',
  'abort',
] as const;
export type FaultKind = (typeof faultKinds)[number];

export interface Fault {
  readonly kind: FaultKind;
  readonly k: number;
}

/** What a killed program leaves is only what stands in the pad and on the disk. */
export class Killed extends Error {}

const NONE = new Uint8Array();

export class MemoryWorld {
  readonly memory: SimulatedMemory;
  /** What is on the disk: steps of the journal, images by their bytes. */
  journal: JournalStep[] = [];
  kept: Uint8Array[] = [];
  /** Steps that were played: commands, and all effects. */
  commands = 0;
  effects = 0;
  /** Where the first write stood among them. */
  firstWrite = { command: 0, effect: 0 };
  readonly #fault: Fault | null;
  /** Bytes that the second program changes. */
  readonly #victim: { readonly inPlan: number; readonly elsewhere: number };
  /** The place where the second program wrote was not read since: nobody can know of it. */
  isUnseen = false;
  #gone = false;
  #last: Uint8Array = new Uint8Array(63);
  #strays: Uint8Array[] = [];

  constructor(
    kind: MemoryKind,
    image: Uint8Array,
    fault: Fault | null = null,
    victim = { inPlan: 0x0102, elsewhere: 0x0300 },
    seed = 1,
  ) {
    this.memory = new SimulatedMemory({ kind, image, seed });
    this.#fault = fault;
    this.#victim = victim;
  }

  play<T>(session: Steps<T>): T {
    let step = session.next();
    while (step.done !== true) {
      const at = this.effects;
      if (this.#is('killed before', at)) throw new Killed();
      const event = this.#perform(step.value);
      this.effects += 1;
      if (this.#is('killed after', at)) throw new Killed();
      step = session.next(event);
    }
    return step.value;
  }

  #is(kind: FaultKind, at: number): boolean {
    const fault = this.#fault;
    return fault?.kind === kind && (kind.endsWith('always') ? at >= fault.k : at === fault.k);
  }

  #perform(effect: SessionEffect): SessionEvent {
    if (effect.do === 'keep' || effect.do === 'journal') {
      if (this.#is('disk full', this.effects) || this.#is('disk full always', this.effects))
        return { is: 'unkept', problem: { code: 'disk-full', says: 'The disk is full.' } };
      if (effect.do === 'keep') this.kept.push(Uint8Array.from(effect.image));
      else this.journal.push(effect.entry);
      return { is: 'kept' };
    }
    if (this.#gone) return { is: 'lost', problem: { code: 'pad-gone', says: 'The pad has left.' } };
    const stray = this.#strays.shift();
    if (stray !== undefined) return { is: 'stray', payload: stray };
    if (effect.do === 'wait') return { is: 'waited' };
    return this.send(effect.reportId, effect.payload);
  }

  /** Replies that nobody waited for; told once. */
  takeStrays(): Uint8Array[] {
    return this.#strays.splice(0);
  }

  /** One command, and what comes of it. */
  send(reportId: number, command: Uint8Array): SessionEvent {
    const at = this.commands;
    this.commands += 1;
    const lost: SessionEvent = { is: 'lost', problem: { code: 'pad-gone', says: 'The pad has left.' } };
    const isWrite = command[0] === 3;
    if (isWrite && this.firstWrite.command === 0) this.firstWrite = { command: at, effect: this.effects };
    if (this.#is('abort', at)) return { is: 'abort' };
    if (this.#is('command lost', at)) return { is: 'timeout' };
    if (this.#is('unplugged before', at)) {
      this.#gone = true;
      return lost;
    }
    if (this.#is('second program writes in the plan', at)) this.#poke(this.#victim.inPlan);
    if (this.#is('second program writes elsewhere', at)) this.#poke(this.#victim.elsewhere);
    if (command[0] === 2 && this.isUnseen) this.isUnseen = !covers(command, this.#victimOf());
    const before = isWrite ? Uint8Array.from(this.memory.image) : NONE;
    const sent = this.#is('bit flip in the command', at) ? flipped(command, at) : command;
    const answer = this.memory.take(reportId, sent);
    if (answer === null) return { is: 'timeout' };
    if (isWrite && (this.#is('write only said', at) || this.#is('write only said always', at)))
      this.memory.image.set(before);
    if (isWrite && this.#is('power lost in a block', at)) {
      const { address, length } = placeOf(command);
      const half = address + (length >> 1);
      this.memory.image.set(before.subarray(half, address + length), half);
      this.#gone = true;
      return lost;
    }
    if (isWrite && (this.#is('write refused', at) || this.#is('write refused always', at))) {
      this.memory.image.set(before);
      return { is: 'reply', payload: withStatus(answer.payload, 5) };
    }
    return this.#answer(answer.payload, at, lost);
  }

  #answer(reply: Uint8Array, at: number, lost: SessionEvent): SessionEvent {
    const last = this.#last;
    this.#last = reply;
    if (this.#is('unplugged after', at)) {
      this.#gone = true;
      return lost;
    }
    if (this.#is('reply lost', at) || this.#is('reply lost always', at)) return { is: 'timeout' };
    if (this.#is('reply late', at)) {
      this.#strays.push(reply);
      return { is: 'timeout' };
    }
    if (this.#is('short reply', at)) return { is: 'reply', payload: reply.subarray(0, 20) };
    if (this.#is('stale reply', at)) return { is: 'reply', payload: last };
    if (this.#is('second program asks', at)) this.#strays.push(withStatus(last, 0));
    if (this.#is('bit flip in the reply', at) || this.#is('bit flip in the reply always', at))
      return { is: 'reply', payload: flipped(reply, at) };
    return { is: 'reply', payload: reply };
  }

  #victimOf(): number {
    return this.#fault?.kind === 'second program writes in the plan' ? this.#victim.inPlan : this.#victim.elsewhere;
  }

  #poke(at: number): void {
    this.isUnseen = true;
    this.memory.image[at] = (this.memory.image[at] ?? 0) ^ 0x55;
  }
}

function placeOf(command: Uint8Array): { readonly address: number; readonly length: number } {
  const [, , a = 0, b = 0, c = 0, length = 0] = command;
  return { address: a + 256 * b + 65_536 * c, length };
}

function covers(command: Uint8Array, at: number): boolean {
  const { address, length } = placeOf(command);
  return at >= address && at < address + length;
}

/** Another bit for each step. */
function flipped(report: Uint8Array, at: number): Uint8Array {
  const bit = (at * 37) % (8 * report.length);
  const copy = Uint8Array.from(report);
  copy[bit >> 3] = (copy[bit >> 3] ?? 0) ^ (1 << (bit & 7));
  return copy;
}

function withStatus(reply: Uint8Array, status: number): Uint8Array {
  const copy = Uint8Array.from(reply);
  copy[2] = status;
  const sum = checksum(copy.subarray(0, 61));
  copy.set([sum & 0xff, sum >> 8], 61);
  return copy;
}
