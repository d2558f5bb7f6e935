/** Who is shown sample batches. A listener that is not ready misses whole batches and is told how many reports that were. */
import { SampleBatchWriter } from '../../../shared/sample-batch.ts';

interface Listener {
  readonly hear: (batch: Uint8Array) => void;
  readonly ready: () => boolean;
  /** Entries left out since the last batch that was shown, by pad. */
  readonly skipped: Map<string, number>;
}

export class SampleFeed {
  readonly #listeners = new Set<Listener>();

  get wanted(): boolean {
    return this.#listeners.size > 0;
  }

  listen(hear: (batch: Uint8Array) => void, ready: () => boolean): () => void {
    const listener = { hear, ready, skipped: new Map<string, number>() };
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  }

  /** Shows one batch of a pad that begins at `t` to every listener that is ready. */
  show(pad: string, t: number, batch: Uint8Array, entries: number): void {
    for (const listener of this.#listeners) {
      const skipped = listener.skipped.get(pad) ?? 0;
      if (!listener.ready()) {
        listener.skipped.set(pad, skipped + entries);
        continue;
      }
      if (skipped > 0) {
        listener.skipped.delete(pad);
        listener.hear(gapAlone(pad, t, skipped));
      }
      listener.hear(batch);
    }
  }
}

function gapAlone(pad: string, t: number, lost: number): Uint8Array {
  const writer = new SampleBatchWriter(pad);
  writer.gap(t, lost);
  return writer.take();
}
