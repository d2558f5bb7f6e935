/** One open pad: started as its profile says, its reports handed on as they come, its health watched. */
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import type { Descriptor } from '../../../core/hid/control.ts';
import { toHex } from '../../../core/hid/hex.ts';
import { ByArrival } from '../../../core/pad/by-arrival.ts';
import { findLayout } from '../../../core/pad/find-layout.ts';
import { ownerOf } from '../../../core/pad/owner.ts';
import { sayPad } from '../../../core/pad/pad-name.ts';
import type { PadLayout } from '../../../core/pad/layout.ts';
import type { Profile } from '../../../core/pad/profile.ts';
import { findProfile } from '../../../core/pad/profiles.ts';
import { done, type Problem, type Result } from '../../../core/result.ts';
import type { EventPayload, Reply } from '../../../shared/contract.ts';
import type { TransportListener } from './transport.ts';
import type { Clock } from '../time/clock.ts';
import type { PadSource } from './pad-source.ts';
import type { PadStream } from './pad-stream.ts';
import { RateMeter } from './rate-meter.ts';
import { startPad, type ReportHearer } from './start-exchange.ts';

type State = EventPayload<'pad.health'>['state'];
export type Health = Omit<EventPayload<'pad.health'>, 'loopDelayMillis'>;

/** A pad that sends only what changes is silent too: the word judges nothing. */
const SILENT_AFTER_MICROS = 1_000_000;

/** A report that was sent to the pad. */
export interface SentReport {
  readonly atMicros: number;
  readonly reportId: number;
  readonly payload: Uint8Array;
}

/** Reports that are replies to somebody and no readings. */
export interface Diversion {
  readonly isTheirs: (reportId: number, payload: Uint8Array) => boolean;
  /** The bytes are lent for the call only. */
  readonly hear: (payload: Uint8Array) => void;
  readonly lost: (problem: Problem) => void;
}

export interface SessionPorts {
  readonly clock: Clock;
  readonly stream: PadStream;
  /** Called whenever the state changes. */
  readonly changed: () => void;
}

export class PadSession {
  readonly pad: string;
  readonly source: PadSource;
  readonly profile: Profile | null;
  readonly #descriptor: Descriptor | null;
  readonly #layouts: ByArrival<PadLayout>;
  readonly #ports: SessionPorts;
  readonly #taps = new Set<TransportListener>();
  readonly #overhearers = new Set<ReportHearer>();
  readonly #rate: RateMeter;
  /** Who takes reports that are not readings, while a memory session runs. */
  #diversion: Diversion | null = null;
  readonly #sent: SentReport[] = [];
  #unit: string | null = null;
  #state: State = 'opening';
  #problem: Problem | null = null;

  constructor(pad: string, source: PadSource, ports: SessionPorts) {
    const { identity, descriptor } = source.transport;
    const parsed = descriptor === null ? null : parseDescriptor(descriptor);
    this.pad = pad;
    this.source = source;
    this.profile = findProfile(identity.vendorId, identity.productId);
    // A descriptor that does not parse is as good as none: the layout then says why no stick was found.
    this.#descriptor = parsed?.ok === true ? parsed.value : null;
    this.#layouts = new ByArrival((arriving) => findLayout(this.#descriptor, this.profile, arriving));
    this.#ports = ports;
    this.#rate = new RateMeter(ports.clock.micros());
  }

  /** Opens the transport and runs the start exchange; after a failure the pad is closed again. */
  async open(): Promise<Result<void>> {
    const opened = await this.#begin();
    if (opened.ok) this.#enter(this.#state === 'opening' ? 'streaming' : this.#state);
    else {
      await this.source.transport.close();
      this.#problem = opened.problem;
      this.#enter('closed');
    }
    return opened;
  }

  /** As known so far; settled once every report that the pad sends has come. */
  get layout(): PadLayout {
    return this.#layouts.now;
  }

  get details(): Reply<'pads.open'> {
    const { identity, descriptor } = this.source.transport;
    return {
      pad: this.pad,
      identity,
      domain: this.layout.domain,
      profile: this.profile?.id ?? null,
      descriptor: descriptor === null ? null : toHex(descriptor),
    };
  }

  /** What it is called, with what tells it from its like; for the ear too. */
  get says(): string {
    const { identity } = this.source.transport;
    return sayPad({ product: identity.product, pad: ownerOf(identity, this.#unit) });
  }

  /** What its memory says of it that no other pad does; null until that was read. */
  get unit(): string | null {
    return this.#unit;
  }

  /** Heard from its memory; it holds as long as the pad stays open. */
  learnUnit(unit: string | null): void {
    if (unit === null || unit === this.#unit) return;
    this.#unit = unit;
    this.#ports.changed();
  }

  /** Hands every report, gap and the loss of the pad to the listener, in order; returns what ends it. */
  tap(listener: TransportListener): () => void {
    this.#taps.add(listener);
    return () => void this.#taps.delete(listener);
  }

  /** Hands the reports that are somebody's own to them alone; returns what ends it. One at a time. */
  divert(diversion: Diversion): () => void {
    this.#diversion = diversion;
    return () => {
      if (this.#diversion === diversion) this.#diversion = null;
    };
  }

  /** What was sent to start the pad, in order: every log of it begins with this. */
  get sent(): readonly SentReport[] {
    return this.#sent;
  }

  get state(): State {
    return this.#state;
  }

  health(): Health {
    const now = this.#ports.clock.micros();
    const quiet = now - (this.#rate.lastReportAt ?? 0) > SILENT_AFTER_MICROS;
    return {
      pad: this.pad,
      state: this.#state === 'streaming' && quiet ? 'silent' : this.#state,
      rateHz: this.#rate.rateHz(now),
      gaps: this.#rate.gaps,
      lost: this.#rate.lost,
      problem: this.#problem,
    };
  }

  async close(): Promise<void> {
    if (this.#state === 'closed') return;
    const lost = this.#state === 'lost';
    if (!lost) this.#enter('closed');
    this.#diversion?.lost({ code: 'pad-gone', says: 'The pad was closed; open it again.' });
    this.#ports.stream.flush();
    await this.source.transport.close();
  }

  async #begin(): Promise<Result<void>> {
    const opened = await this.source.transport.open(this.#listener);
    if (!opened.ok || this.profile === null) return opened;
    const started = await startPad(this.profile, {
      transport: this.source.transport,
      clock: this.#ports.clock,
      overhear: (hear) => {
        this.#overhearers.add(hear);
        return () => void this.#overhearers.delete(hear);
      },
      sent: (reportId, payload) => this.#sent.push({ atMicros: this.#ports.clock.micros(), reportId, payload }),
    });
    // A pad that left while a reply was awaited is gone, not silent.
    if (this.#problem !== null) return { ok: false, problem: this.#problem };
    return started.ok ? done(undefined) : started;
  }

  readonly #listener: TransportListener = {
    report: (atMicros, reportId, payload) => {
      if (this.#diversion?.isTheirs(reportId, payload) === true) {
        this.#diversion.hear(payload);
        return;
      }
      this.#rate.report(atMicros);
      this.#layouts.at(reportId);
      for (const hear of this.#overhearers) hear(reportId, payload);
      for (const tap of this.#taps) tap.report(atMicros, reportId, payload);
      this.#ports.stream.report(atMicros, reportId, payload);
    },
    gap: (atMicros, lost) => {
      this.#rate.gap(lost);
      for (const tap of this.#taps) tap.gap(atMicros, lost);
      this.#ports.stream.gap(atMicros, lost);
    },
    lost: (problem) => {
      this.#problem = problem;
      this.#enter('lost');
      this.#diversion?.lost(problem);
      for (const tap of this.#taps) tap.lost(problem);
    },
  };

  #enter(state: State): void {
    this.#state = state;
    this.#ports.changed();
  }
}
