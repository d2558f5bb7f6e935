/** As many workers as the machine has cores, each judging one case at a time. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { BlindAnswer, BlindCase } from './judge-unit.ts';

export class Judges {
  readonly #workers = Array.from(
    { length: availableParallelism() },
    () => new Worker(new URL('./worker.ts', import.meta.url)),
  );

  /** Answers in the order of the cases; a worker that fails ends the run. */
  async judge(cases: readonly BlindCase[]): Promise<BlindAnswer[]> {
    const answers = new Array<BlindAnswer>(cases.length);
    let next = 0;
    await Promise.all(
      this.#workers.map(
        (worker) =>
          new Promise<void>((resolve, reject) => {
            const give = (): void => {
              const id = next;
              next += 1;
              const blind = cases[id];
              if (blind === undefined) {
                worker.removeAllListeners('message');
                resolve();
              } else worker.postMessage({ id, blind });
            };
            worker.once('error', reject);
            worker.on('message', ({ id, answer }: { id: number; answer: BlindAnswer }) => {
              answers[id] = answer;
              give();
            });
            give();
          }),
      ),
    );
    for (const worker of this.#workers) worker.removeAllListeners('error');
    return answers;
  }

  async close(): Promise<void> {
    await Promise.all(this.#workers.map((worker) => worker.terminate()));
  }
}
