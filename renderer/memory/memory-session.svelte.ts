/** The memory of the pad in hand: what may be done, the session that runs, writes that broke off. Owns state, renders nothing. */
import { createContext } from 'svelte';
import type { Problem, Result } from '../../core/result.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { EventPayload, Reply, Request } from '../../shared/contract.ts';

export type About = Reply<'memory.about'>;
export type SessionState = EventPayload<'memory.state'>;
export type Journal = Reply<'journals.list'>[number];
export type Preview = Reply<'memory.preview'>;
export type WriteWish = Request<'memory.preview'>['wish'];

export class MemorySession {
  about = $state.raw<About | null>(null);
  /** Where the session of the pad in hand stands; null where there was none. */
  state = $state.raw<SessionState | null>(null);
  journals = $state.raw<readonly Journal[]>([]);
  /** What is about to be written, until it is confirmed, put away or too old. */
  preview = $state.raw<Preview | null>(null);
  problem = $state.raw<Problem | null>(null);
  #pad: string | null = null;
  /** States told so far: a reply that comes after a newer one says nothing new. */
  #told = 0;
  readonly #bench: BenchApi;

  constructor(bench: BenchApi) {
    this.#bench = bench;
  }

  get running(): boolean {
    return this.state !== null && this.state.end === null;
  }

  /** Bytes may be under way to the pad: the window must stay open. */
  get writing(): boolean {
    return this.running && this.state?.writing === true;
  }

  /** Follows sessions and journals. Returns the function that ends it. */
  async follow(): Promise<() => void> {
    const ends = [
      this.#bench.listen('memory.state', (state) => {
        if (state.pad !== this.#pad) return;
        this.#told += 1;
        this.state = state;
        if (state.end !== null) void this.#lookAgain();
      }),
      this.#bench.listen('journals.changed', (journals) => (this.journals = journals)),
    ];
    const reply = await this.#bench.call('journals.list', {});
    if (reply.ok) this.journals = reply.value;
    else this.problem = reply.problem;
    return () => {
      for (const end of ends) end();
    };
  }

  /** Another pad in hand, or none. */
  async take(pad: string | null): Promise<void> {
    this.#pad = pad;
    this.about = null;
    this.state = null;
    this.preview = null;
    this.problem = null;
    if (pad === null) return;
    await this.#lookAgain();
    const latest = await this.#bench.call('memory.latest', { pad });
    if (this.#pad === pad && latest.ok) this.state ??= latest.value.state;
  }

  async allow(writing: boolean): Promise<void> {
    const pad = this.#pad;
    if (pad === null) return;
    this.preview = null;
    this.#hear(pad, await this.#bench.call('memory.allow', { pad, writing }), (about) => (this.about = about));
  }

  async read(): Promise<void> {
    const pad = this.#pad;
    if (pad === null) return;
    await this.#begin(() => this.#bench.call('memory.read', { pad }));
  }

  /** Asks what would be written; nothing is. */
  async ask(wish: WriteWish): Promise<void> {
    const pad = this.#pad;
    if (pad === null) return;
    this.preview = null;
    this.#hear(pad, await this.#bench.call('memory.preview', { pad, wish }), (preview) => (this.preview = preview));
  }

  putPreviewAway(): void {
    this.preview = null;
  }

  /** Writes what was shown; each thing that it asks is accepted by its word. */
  async confirm(accepts: Preview['asks'][number]['code'][]): Promise<void> {
    const [pad, preview] = [this.#pad, this.preview];
    if (pad === null || preview === null) return;
    this.preview = null;
    await this.#begin(() => this.#bench.call('memory.write', { pad, token: preview.token, accepts }));
    // Refused, it is as good as it was.
    if (this.problem !== null && pad === this.#pad) this.preview ??= preview;
  }

  /** Ends what runs; a write that was begun is rolled back. */
  async abort(): Promise<void> {
    const pad = this.#pad;
    if (pad === null) return;
    await this.#begin(() => this.#bench.call('memory.abort', { pad }));
  }

  /** Looks what a write that broke off left in the pad. */
  async show(journal: string): Promise<void> {
    const pad = this.#pad;
    if (pad === null) return;
    await this.#begin(() => this.#bench.call('memory.show', { pad, journal }));
  }

  async dismiss(journal: string): Promise<void> {
    const reply = await this.#bench.call('journals.dismiss', { journal });
    this.problem = reply.ok ? null : reply.problem;
    if (!reply.ok) return;
    this.journals = reply.value;
    await this.#lookAgain();
  }

  async #begin(call: () => Promise<Result<SessionState>>): Promise<void> {
    const [pad, told] = [this.#pad, this.#told];
    const reply = await call();
    if (pad === null) return;
    this.#hear(pad, reply, (state) => {
      if (told === this.#told) this.state = state;
    });
  }

  async #lookAgain(): Promise<void> {
    const pad = this.#pad;
    if (pad === null) return;
    this.#hear(pad, await this.#bench.call('memory.about', { pad }), (about) => (this.about = about));
  }

  #hear<T>(pad: string, reply: Result<T>, take: (value: T) => void): void {
    if (pad !== this.#pad) return;
    this.problem = reply.ok ? null : reply.problem;
    if (reply.ok) take(reply.value);
  }
}

/** Handed down once by the app. */
export const [useMemory, provideMemory] = createContext<MemorySession>();
