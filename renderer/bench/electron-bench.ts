/** The bench in Electron: calls and events through the preload, sample batches through a port of their own. */
import type { Result } from '../../core/result.ts';
import type { BenchApi } from '../../shared/bench-api.ts';

/** What the preload puts on the window. */
export interface PreloadBench extends Pick<BenchApi, 'call' | 'listen'> {
  openSamples(): Promise<void>;
  /** Saves by the system's dialogue; `name` is offered. Not saved where the user thought better of it. */
  save(name: string, bytes: Uint8Array): Promise<Result<{ readonly saved: boolean }>>;
}

/** The message with which the preload hands the port over. */
const PORT_MESSAGE = 'bench.samples';

export function electronBench(preload: PreloadBench, page: Window): BenchApi {
  const hearers = new Set<(batch: Uint8Array) => void>();
  let port: MessagePort | null = null;
  let asked = false;

  page.addEventListener('message', (event: MessageEvent<unknown>) => {
    if (event.source !== page || event.data !== PORT_MESSAGE) return;
    port?.close();
    port = event.ports[0] ?? null;
    if (port === null) return;
    const own = port;
    own.onmessage = (message: MessageEvent<unknown>) => {
      if (message.data instanceof Uint8Array) for (const hear of hearers) hear(message.data);
      // Credit: the bench sends on only as many batches as the page has taken.
      own.postMessage(null);
    };
  });

  return {
    call: (name, request) => preload.call(name, request),
    listen: (name, hear) => preload.listen(name, hear),
    samples(hear) {
      hearers.add(hear);
      if (!asked) {
        asked = true;
        void preload.openSamples();
      }
      return () => void hearers.delete(hear);
    },
  };
}
