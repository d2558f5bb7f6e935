/** The settings as the bench keeps them. A change shows at once and is written; a refused write is told and undone. */
import { createContext } from 'svelte';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { Problem, Result } from '../../core/result.ts';
import type { Reply, Request } from '../../shared/contract.ts';

export type Settings = Reply<'settings.read'>;

export class SettingsState {
  /** Null until the bench has answered. */
  values = $state.raw<Settings | null>(null);
  problem = $state.raw<Problem | null>(null);
  readonly #bench: BenchApi;

  constructor(bench: BenchApi) {
    this.#bench = bench;
  }

  /** Reads the settings and follows their changes. Returns the function that ends the following. */
  async follow(): Promise<() => void> {
    const end = this.#bench.listen('settings.changed', (settings) => {
      this.values = settings;
    });
    this.#take(await this.#bench.call('settings.read', {}));
    return end;
  }

  async change(part: Request<'settings.write'>): Promise<void> {
    const before = this.values;
    if (before !== null) this.values = { ...before, ...withoutHoles(part) };
    const reply = await this.#bench.call('settings.write', part);
    if (!reply.ok) this.values = before;
    this.#take(reply);
  }

  #take(reply: Result<Settings>): void {
    this.problem = reply.ok ? null : reply.problem;
    if (reply.ok) this.values = reply.value;
  }
}

function withoutHoles(part: Request<'settings.write'>): Partial<Settings> {
  return Object.fromEntries(Object.entries(part).filter(([, value]) => value !== undefined));
}

/** Handed down once by the app. */
export const [useSettings, provideSettings] = createContext<SettingsState>();
