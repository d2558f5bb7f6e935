/** The memory behind a virtual pad: the world of faults that the unit tests play sessions in, here at the far end of a real node. */
import { readHex } from '../../../core/hid/hex.ts';
import type { MemoryKind } from '../../../core/simulate/memory-image.ts';
import { MemoryWorld, protocol, type Fault } from '../../support/memory-world.ts';

export interface MemoryOrder {
  readonly kind: MemoryKind;
  /** Hex; null: what stands there already. */
  readonly image: string | null;
  readonly fault: Fault | null;
}

export interface PadMemoryPorts {
  /** Sends an input report, its id first; must do nothing once the pad has left. */
  readonly reply: (report: Buffer) => void;
  readonly leave: () => void;
}

/** Later than the protocol waits for a reply, sooner than it asks again. */
const LATE_MILLIS = { read: 150, write: 450 } as const;

export class PadMemory {
  readonly #ports: PadMemoryPorts;
  #world: MemoryWorld | null = null;

  constructor(ports: PadMemoryPorts) {
    this.#ports = ports;
  }

  get image(): Uint8Array {
    return this.#world?.memory.image ?? new Uint8Array();
  }

  set({ kind, image, fault }: MemoryOrder): void {
    const bytes = image === null ? null : readHex(image);
    if (bytes?.ok === false) throw new Error(bytes.problem.says);
    this.#world = new MemoryWorld(kind, bytes?.value ?? this.image, fault);
  }

  /** An output report, its id first; false where it is no command or there is no memory. */
  take(report: Buffer): boolean {
    const [reportId, ...rest] = report;
    const world = this.#world;
    if (world === null || reportId !== protocol.command.reportId) return false;
    const command = Uint8Array.from(rest);
    const event = world.send(reportId, command);
    if (event.is === 'lost') this.#ports.leave();
    if (event.is === 'reply') this.#reply(event.payload);
    const late = command[protocol.command.code] === protocol.write.code ? LATE_MILLIS.write : LATE_MILLIS.read;
    for (const stray of world.takeStrays()) {
      if (event.is === 'reply') this.#reply(stray);
      else setTimeout(() => this.#reply(stray), late);
    }
    return true;
  }

  #reply(payload: Uint8Array): void {
    this.#ports.reply(Buffer.from([protocol.reply.reportId, ...payload]));
  }
}
