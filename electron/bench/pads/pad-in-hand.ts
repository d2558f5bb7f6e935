/**
 * The pad in hand: one for the bench, whatever pages look at it. It is put there by a person, or by the program where the
 * hand is empty, and nothing but a person takes it from there; where it leaves it is gone until it returns.
 */
import type { StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Problem, type Result } from '../../../core/result.ts';
import type { EventPayload, Reply, Request } from '../../../shared/contract.ts';
import type { Clock } from '../time/clock.ts';
import type { PadSessions } from './pad-sessions.ts';
import type { KnownPads, PadSummary } from './known-pads.ts';

type Hand = EventPayload<'hand.changed'>;
type Movement = Request<'demo.hand'>['does'];
type Who = 'person' | 'program';

/** A pad that comes back may not be ready at once: it is tried so often, so far apart. */
const RETRY_MILLIS = 500;
const MOST_TRIES = 8;

export interface HandPorts {
  readonly clock: Clock;
  readonly registry: Pick<KnownPads, 'list' | 'find'>;
  readonly padSessions: Pick<PadSessions, 'open' | 'close' | 'isOpen' | 'unitOf'>;
  /** Why the pad has to stay in hand, as a sentence; null where it has not. */
  readonly busy: (pad: string) => Problem | null;
  readonly tell: (hand: Hand) => void;
  /** Whether an empty hand takes what is there. */
  readonly takesPads: boolean;
}

export class PadInHand {
  readonly #ports: HandPorts;
  #pad: Reply<'pads.open'> | null = null;
  #by: Who = 'program';
  #unit: string | null = null;
  #isGone = false;
  #problem: Problem | null = null;
  readonly #does = new Map<string, Partial<Record<StickId, Movement>>>();
  /** Pads that were put down or, until the list changes, could not be opened: they are not taken without being asked for. */
  readonly #putDown = new Set<string>();
  readonly #failed = new Set<string>();
  /** The machine sleeps or the bench closes: pads are closed and stay so. */
  #isResting = false;
  #tries = 0;
  #cancelRetry: () => void = () => undefined;
  /** One take after the other. */
  #turn: Promise<unknown> = Promise.resolve();

  constructor(ports: HandPorts) {
    this.#ports = ports;
  }

  get state(): Hand {
    const pad = this.#pad;
    const does = pad === null ? {} : (this.#does.get(pad.pad) ?? {});
    return { pad, unit: this.#unit, gone: this.#isGone, does, problem: this.#problem };
  }

  isInHand(pad: string): boolean {
    return this.#pad?.pad === pad;
  }

  /** The list of pads with the one in hand in it, also where that one is gone. */
  listed(list: readonly PadSummary[]): PadSummary[] {
    const pad = this.#pad;
    if (pad === null || list.some((one) => one.pad === pad.pad)) return [...list];
    const problem = { code: 'pad-gone', says: 'This pad is no longer there; plug it in again, or take another.' };
    return [{ pad: pad.pad, identity: pad.identity, open: false, problem, rule: null, unit: this.#unit }, ...list];
  }

  take(pad: string): Promise<Result<Hand>> {
    this.#isResting = false;
    this.#tries = 0;
    return this.#inTurn(() => this.#take(pad, 'person'));
  }

  /** What the hand of a simulated pad was told. */
  moves(pad: string, stick: StickId, does: Movement): void {
    this.#does.set(pad, { ...this.#does.get(pad), [stick]: does });
    if (this.isInHand(pad)) this.#tell();
  }

  /** The pad is closed or taken away on request: where it is in hand, the hand is empty. */
  putDown(pad: string): void {
    if (!this.isInHand(pad)) return;
    this.#putDown.add(pad);
    this.#hold(null, 'program');
  }

  /** Before pads are closed for the machine's sleep or for good. */
  rest(): void {
    this.#isResting = true;
    this.#cancelRetry();
  }

  /** After the machine slept: the pad in hand is opened again. */
  wake(): void {
    if (!this.#isResting) return;
    this.#isResting = false;
    this.look();
  }

  /** The list of pads has changed: what could not be opened is tried anew. */
  lookAnew(): void {
    this.#tries = 0;
    this.#failed.clear();
    const there = new Set(this.#ports.registry.list().map(({ pad }) => pad));
    for (const pad of this.#putDown) if (!there.has(pad)) this.#putDown.delete(pad);
    this.look();
  }

  /** A pad was opened, closed or lost, or more is known of one. */
  look(): void {
    const pad = this.#pad?.pad ?? null;
    if (this.#isResting) return;
    if (pad !== null && !this.#isGone && !this.#ports.padSessions.isOpen(pad)) {
      this.#isGone = true;
      this.#tell();
    }
    const unit = pad === null || this.#isGone ? this.#unit : this.#ports.padSessions.unitOf(pad);
    if (unit !== this.#unit) {
      this.#unit = unit;
      this.#tell();
    }
    if (this.#wanted() !== null) void this.#inTurn(() => this.#settle());
  }

  async #settle(): Promise<void> {
    const wanted = this.#isResting ? null : this.#wanted();
    if (wanted === null) return;
    if (this.isInHand(wanted)) this.#tries += 1;
    const taken = await this.#take(wanted, this.isInHand(wanted) ? this.#by : 'program');
    if (taken.ok || this.#isResting) return;
    if (this.isInHand(wanted)) {
      this.#cancelRetry();
      this.#cancelRetry = this.#ports.clock.after(RETRY_MILLIS, () => this.look());
      return;
    }
    this.#failed.add(wanted);
    this.#problem = taken.problem;
    this.#tell();
    await this.#settle();
  }

  /** The pad that is to be taken without being asked for: the one in hand that returned, else a first one, real before simulated. */
  #wanted(): string | null {
    const { registry, takesPads, busy } = this.#ports;
    const there = registry.list().filter(({ problem }) => problem === null);
    const held = this.#pad;
    if (held !== null && this.#isGone)
      return this.#tries < MOST_TRIES && there.some(({ pad }) => pad === held.pad) ? held.pad : null;
    if (!takesPads) return null;
    const free = there.filter(({ pad }) => !this.#putDown.has(pad) && !this.#failed.has(pad));
    const real = free.find(({ identity }) => identity.transport !== 'simulated');
    if (held === null) return (real ?? free[0])?.pad ?? null;
    const isStandIn = this.#by === 'program' && held.identity.transport === 'simulated' && busy(held.pad) === null;
    return isStandIn ? (real?.pad ?? null) : null;
  }

  async #take(pad: string, by: Who): Promise<Result<Hand>> {
    const { registry, padSessions } = this.#ports;
    if (this.isInHand(pad) && padSessions.isOpen(pad)) {
      if (by === 'person') this.#by = by;
      return done(this.state);
    }
    const before = this.#pad?.pad ?? null;
    const stays = this.#stays(pad);
    if (stays !== null) return stays;
    const source = registry.find(pad);
    if (!source.ok) return source;
    const wasOpen = padSessions.isOpen(pad);
    const opened = await padSessions.open(pad, source.value);
    if (!opened.ok) return opened;
    // A session may have begun while it was opened.
    const staysNow = this.#stays(pad);
    if (staysNow !== null) {
      if (!wasOpen) await padSessions.close(pad);
      return staysNow;
    }
    this.#hold(opened.value, by);
    if (before !== null && before !== pad) await padSessions.close(before);
    this.look();
    return done(this.state);
  }

  /** Why another pad cannot be taken, or null. */
  #stays(pad: string): ReturnType<typeof failed> | null {
    const problem = this.#pad === null || this.isInHand(pad) ? null : this.#ports.busy(this.#pad.pad);
    return problem === null ? null : { ok: false, problem };
  }

  #hold(pad: Reply<'pads.open'> | null, by: Who): void {
    this.#pad = pad;
    this.#by = by;
    this.#isGone = false;
    // A simulated pad that took the place of one that could not be opened does not hide why.
    if (by === 'person') this.#problem = null;
    this.#cancelRetry();
    this.#unit = pad === null ? null : this.#ports.padSessions.unitOf(pad.pad);
    if (pad !== null) this.#putDown.delete(pad.pad);
    this.#tell();
  }

  #tell(): void {
    this.#ports.tell(this.state);
  }

  #inTurn<T>(step: () => Promise<T>): Promise<T> {
    const next = this.#turn.then(step);
    this.#turn = next.catch(() => undefined);
    return next;
  }
}
