/** As many workers as the machine has cores, each answering one question at a time. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Answered, Asked } from './answer-asked.ts';

/** `script` answers with `answerAsked`. */
export class Crew<Question, Answer> {
  readonly #workers: readonly Worker[];

  constructor(script: URL) {
    this.#workers = Array.from({ length: availableParallelism() }, () => new Worker(script));
  }

  /** Answers in the order of the questions; a worker that fails ends the run. */
  async answer(questions: readonly Question[]): Promise<Answer[]> {
    const answers = new Map<number, Answer>();
    let next = 0;
    const work = (worker: Worker): Promise<void> =>
      new Promise((resolve, reject) => {
        const give = (): void => {
          const id = next;
          const question = questions[id];
          next += 1;
          if (question === undefined) {
            worker.removeAllListeners('message');
            worker.removeAllListeners('error');
            resolve();
          } else worker.postMessage({ id, question } satisfies Asked<Question>);
        };
        worker.on('error', reject);
        worker.on('message', ({ id, answer }: Answered<Answer>) => {
          answers.set(id, answer);
          give();
        });
        give();
      });
    await Promise.all(this.#workers.map(work));
    return questions.map((_, id) => answers.get(id) as Answer);
  }

  async close(): Promise<void> {
    await Promise.all(this.#workers.map((worker) => worker.terminate()));
  }
}
