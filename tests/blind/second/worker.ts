/** Judges the draws that it is sent, one after the other. */
import { parentPort } from 'node:worker_threads';
import type { Wish } from './draw-unit.ts';
import { judgeDraw } from './judge-draw.ts';

export interface Asked {
  readonly id: number;
  readonly wish: Wish;
  readonly folder: string | null;
}

parentPort?.on('message', ({ id, wish, folder }: Asked) => {
  parentPort?.postMessage({ id, judged: judgeDraw(wish, folder) });
});
