/** What a consumer makes of a measured stick: one cell of the matrix consumers × sticks. */
import type { StickId } from '../pad/stick.ts';
import { answerUnder } from './answer-chain.ts';
import type { Chain, Stage, ZoneAnswer } from './chain.ts';
import type { Consumer } from './consumer.ts';
import type { StickUnder } from './stick-under.ts';

/** Output from here on counts as full: what is lost below it nobody is slowed by. */
const FULL_OUTPUT = 0.99;

export interface ConsumerAnswer {
  readonly consumer: string;
  readonly stick: StickId;
  /** The stages that a signal of this stick meets on its way into the consumer. */
  readonly stages: readonly Stage[];
  readonly answer: ZoneAnswer;
  /** What comes out at rest as a share of full output: at that share of its full speed a view turns by itself. */
  readonly leak: number | null;
  /** Covered directions with less than full output at the gate, and not below what the consumer needs. */
  readonly slow: readonly number[];
  /** Covered directions that stay below what the consumer needs; without a stated need those with no output at all. */
  readonly neverReaches: readonly number[];
  /** The cell in words: `hidden`, `leaks`, `slow in some directions`, `never reaches`; several may hold. Null without any evidence. */
  readonly says: readonly ConsumerWord[] | null;
}

export type ConsumerWord = 'hidden' | 'hidden so far' | 'leaks' | 'slow in some directions' | 'never reaches';

/**
 * The consumer's own chain behind the driver's where it takes the driver's output, alone where it takes the pad's. Null where
 * the consumer has no chain for the stick. `hidden` takes the tolerance radius; fewer clean releases are `hidden so far`.
 */
export function judgeConsumer(
  under: StickUnder,
  stick: StickId,
  consumer: Consumer,
  driver: Pick<Chain, 'stages'> | null,
): ConsumerAnswer | null {
  const own = consumer.chains[stick];
  if (own === undefined) return null;
  const stages = stagesInto(consumer, own.stages, driver);
  const chain: Chain = { kind: 'stickwright-chain', version: 1, name: consumer.name, stages, needs: consumer.needs };
  const answer = answerUnder(under, chain);
  const neverReaches = answer.gate?.filter(isBelow(consumer.needs)).map(({ angle }) => angle) ?? [];
  const slow =
    answer.gate
      ?.filter(
        ({ angle, output, covered }) =>
          covered && output !== null && output < FULL_OUTPUT && !neverReaches.includes(angle),
      )
      .map(({ angle }) => angle) ?? [];
  const leak = answer.leaks?.largestOutput ?? null;
  return {
    consumer: consumer.name,
    stick,
    stages,
    answer,
    leak,
    slow,
    neverReaches,
    says: say(answer, slow, neverReaches),
  };
}

/** A consumer that takes the pad's output sees nothing of what the driver does. */
export function stagesInto(
  consumer: Pick<Consumer, 'takes'>,
  own: readonly Stage[],
  driver: Pick<Chain, 'stages'> | null,
): readonly Stage[] {
  return consumer.takes === 'driver' && driver !== null ? [...driver.stages, ...own] : own;
}

function isBelow(needs: number | null): (gate: NonNullable<ZoneAnswer['gate']>[number]) => boolean {
  return ({ output, covered }) => covered && output !== null && (needs === null ? output === 0 : output < needs);
}

function say(answer: ZoneAnswer, slow: readonly number[], neverReaches: readonly number[]): ConsumerWord[] | null {
  if (answer.hides === null && answer.gate === null) return null;
  const words: ConsumerWord[] = [];
  if (answer.hides === 'leaks') words.push('leaks');
  else if (answer.hides === 'hidden') words.push('hidden');
  else if (answer.hides !== null) words.push('hidden so far');
  if (slow.length > 0) words.push('slow in some directions');
  if (neverReaches.length > 0) words.push('never reaches');
  return words;
}
