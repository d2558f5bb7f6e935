/** The pads that are open: one session a pad, however many ask for it. */
import { failed, type Result } from '../../../core/result.ts';
import type { EventPayload, Reply } from '../../../shared/contract.ts';
import type { Clock } from '../time/clock.ts';
import type { LoopDelay } from '../time/loop-delay.ts';
import type { PadSource } from './pad-source.ts';
import { PadSession } from './pad-session.ts';
import { PadStream } from './pad-stream.ts';
import type { SampleFeed } from './sample-feed.ts';

const HEALTH_MILLIS = 1_000;

export interface RackPorts {
  readonly clock: Clock;
  readonly feed: SampleFeed;
  readonly loopDelay: LoopDelay;
  readonly tellHealth: (health: EventPayload<'pad.health'>) => void;
  /** Once a second: the longest delay of the event loop in that second. */
  readonly delayed: (millis: number) => void;
  /** A pad was opened or closed, or the one named was lost. */
  readonly changed: (lost: string | null) => void;
}

export class PadSessions {
  readonly #ports: RackPorts;
  readonly #sessions = new Map<string, PadSession>();
  readonly #opening = new Map<string, Promise<Result<PadSession>>>();
  #delayMillis = 0;
  #cancelTick: () => void;

  constructor(ports: RackPorts) {
    this.#ports = ports;
    this.#cancelTick = ports.clock.after(HEALTH_MILLIS, () => this.#tick());
  }

  isOpen(pad: string): boolean {
    return this.#sessions.has(pad);
  }

  /** What the memory of an open pad said of it that no other pad does. */
  unitOf(pad: string): string | null {
    return this.#sessions.get(pad)?.unit ?? null;
  }

  session(pad: string): Result<PadSession> {
    const session = this.#sessions.get(pad);
    if (session !== undefined) return { ok: true, value: session };
    return failed('pad-not-open', 'This pad is not open; open it first.');
  }

  /** Opens the pad, or answers with the session that is open or being opened already. */
  async open(pad: string, source: PadSource): Promise<Result<Reply<'pads.open'>>> {
    const opening = this.#opening.get(pad) ?? this.#begin(pad, source);
    this.#opening.set(pad, opening);
    const opened = await opening;
    this.#opening.delete(pad);
    return opened.ok ? { ok: true, value: opened.value.details } : opened;
  }

  async close(pad: string): Promise<void> {
    await this.#opening.get(pad);
    const session = this.#sessions.get(pad);
    this.#sessions.delete(pad);
    await session?.close();
    this.#ports.changed(null);
  }

  async closeAll(): Promise<void> {
    for (const pad of [...this.#sessions.keys()]) await this.close(pad);
  }

  async stop(): Promise<void> {
    this.#cancelTick();
    await this.closeAll();
    this.#ports.loopDelay.stop();
  }

  async #begin(pad: string, source: PadSource): Promise<Result<PadSession>> {
    const known = this.#sessions.get(pad);
    if (known !== undefined) return { ok: true, value: known };
    const { clock, feed, changed } = this.#ports;
    const session: PadSession = new PadSession(pad, source, {
      clock,
      stream: new PadStream(pad, clock, feed),
      changed: () => {
        this.#tell(session);
        if (this.#sessions.get(pad) === session && session.state !== 'lost') changed(null);
        // A lost pad is no longer open: it can be opened again once it is back.
        if (session.state === 'lost' && this.#sessions.delete(pad)) {
          void session.close();
          changed(pad);
        }
      },
    });
    const opened = await session.open();
    if (!opened.ok) return opened;
    this.#sessions.set(pad, session);
    changed(null);
    return { ok: true, value: session };
  }

  #tell(session: PadSession): void {
    this.#ports.tellHealth({ ...session.health(), loopDelayMillis: this.#delayMillis });
  }

  #tick(): void {
    this.#delayMillis = this.#ports.loopDelay.take();
    this.#ports.delayed(this.#delayMillis);
    for (const session of this.#sessions.values()) this.#tell(session);
    this.#cancelTick = this.#ports.clock.after(HEALTH_MILLIS, () => this.#tick());
  }
}
