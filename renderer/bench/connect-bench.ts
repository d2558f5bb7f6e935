/** The page's one way to the bench: through the preload in Electron, else over the local socket. */
import type { BenchApi } from '../../shared/bench-api.ts';
import type { HearConnection } from './connection.ts';
import { electronBench, type PreloadBench } from './electron-bench.ts';
import { openLocalBench } from './local-bench.ts';

declare global {
  interface Window {
    readonly bench?: PreloadBench;
  }
}

/**
 * Resolves once the bench answers or has refused the page; calls answer with a problem while it cannot be reached.
 * `hear` is told how the connection stands, now and whenever it changes; after `connected` what was listed may be old.
 */
export async function connectBench(hear: HearConnection = () => undefined): Promise<BenchApi> {
  if (window.bench !== undefined) {
    hear('connected');
    return electronBench(window.bench, window);
  }
  return openLocalBench(window, hear);
}
