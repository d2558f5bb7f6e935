/** Two kept images side by side. Owns state, renders nothing. */
import type { Problem } from '../../core/result.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { Comparison } from './memory-images.svelte.ts';

export class ImageComparison {
  found = $state.raw<Comparison | null>(null);
  problem = $state.raw<Problem | null>(null);
  #asked = 0;
  readonly #bench: BenchApi;

  constructor(bench: BenchApi) {
    this.#bench = bench;
  }

  /** The newest call wins. */
  async compare(first: string, second: string, map: string | null): Promise<void> {
    this.putAway();
    const asked = this.#asked;
    const reply = await this.#bench.call('images.compare', { first, second, map });
    if (asked !== this.#asked) return;
    this.found = reply.ok ? reply.value : null;
    this.problem = reply.ok ? null : reply.problem;
  }

  putAway(): void {
    this.#asked += 1;
    this.found = null;
    this.problem = null;
  }
}
