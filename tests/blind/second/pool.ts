/** As many workers as the machine has cores, each judging one draw at a time. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Wish } from './draw-unit.ts';
import type { Judged } from './judge-draw.ts';
import type { Asked } from './worker.ts';

/** Answers in the order of the wishes; a worker that fails ends the run. */
export class Pool {
  readonly #folder: string | null;
  readonly #workers = Array.from(
    { length: availableParallelism() },
    () => new Worker(new URL('./worker.ts', import.meta.url)),
  );

  constructor(folder: string | null) {
    this.#folder = folder;
  }

  async judge(wishes: readonly Wish[]): Promise<Judged[]> {
    const answers = new Map<number, Judged>();
    let next = 0;
    const work = (worker: Worker): Promise<void> =>
      new Promise((resolve, reject) => {
        const give = (): void => {
          const id = next;
          const wish = wishes[id];
          next += 1;
          if (wish === undefined) {
            worker.removeAllListeners('message');
            worker.removeAllListeners('error');
            resolve();
          } else worker.postMessage({ id, wish, folder: this.#folder } satisfies Asked);
        };
        worker.on('error', reject);
        worker.on('message', ({ id, judged }: { readonly id: number; readonly judged: Judged }) => {
          answers.set(id, judged);
          give();
        });
        give();
      });
    await Promise.all(this.#workers.map(work));
    return wishes.flatMap((_, id) => answers.get(id) ?? []);
  }

  async close(): Promise<void> {
    await Promise.all(this.#workers.map((worker) => worker.terminate()));
  }
}
