/** The side of a worker that answers its crew's questions, one after the other. */
import { parentPort } from 'node:worker_threads';

export interface Asked<Question> {
  readonly id: number;
  readonly question: Question;
}

export interface Answered<Answer> {
  readonly id: number;
  readonly answer: Answer;
}

/** What kind of question it is, a crew and its script have agreed on: nothing tells it of a message. */
export function answerAsked(answer: (question: never) => unknown): void {
  parentPort?.on('message', ({ id, question }: Asked<never>) => {
    parentPort?.postMessage({ id, answer: answer(question) } satisfies Answered<unknown>);
  });
}
