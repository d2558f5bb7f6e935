/** One command in flight: sent, its reply awaited, sent again a counted number of times; whatever else comes in ends it. */
import { done, failed, type Problem, type Result } from '../result.ts';
import { packCommand, readReply, type MemoryCommand, type MemoryReply } from './memory-command.ts';
import { newTally, type SessionEvent, type SessionTally, type Steps } from './memory-effects.ts';
import type { MemoryProtocol } from './memory-protocol.ts';

/** The state of one session's exchange with its pad. */
export interface Exchange {
  readonly protocol: MemoryProtocol;
  readonly tally: SessionTally;
  sequence: number;
  /** What the pad said that no other pad says, hex; null until it was asked, and where its protocol tells nothing. */
  unit: string | null;
  /** While a write is rolled back: replies that nobody waited for and wishes to end it are passed over: there is no way but on. */
  isCalm: boolean;
}

const NO_DATA = new Uint8Array();
/** A pad that goes on sending what nobody asked for is not waited out. */
const MOST_STRAYS = 32;

export function newExchange(protocol: MemoryProtocol): Exchange {
  return { protocol, tally: newTally(), sequence: 0, unit: null, isCalm: false };
}

/**
 * The reply's data. Codes: `memory-timeout`, `memory-damaged` and `memory-busy` after the last retry; at once
 * `memory-refused`, `memory-stray`, `memory-aborted` and whatever the pad was lost with.
 */
export function* ask(
  exchange: Exchange,
  code: number,
  at: { readonly offset: number; readonly length: number } = { offset: 0, length: 0 },
  data: Uint8Array = NO_DATA,
): Steps<Result<Uint8Array>> {
  const { protocol, tally } = exchange;
  const { command, timeoutMillis, retries } = protocol;
  for (let attempt = 0; ; attempt += 1) {
    exchange.sequence = (exchange.sequence + 1) & 0xff;
    const asked: MemoryCommand = { code, sequence: exchange.sequence, address: at.offset, length: at.length, data };
    const early = yield* pause(exchange, protocol.spacingMillis, null);
    if (early !== null) return { ok: false, problem: early };
    const sending = {
      do: 'send',
      reportId: command.reportId,
      payload: packCommand(protocol, asked),
      timeoutMillis: data.length > 0 ? timeoutMillis.write : timeoutMillis.read,
    } as const;
    let event = yield sending;
    while (event.is === 'abort' && exchange.isCalm) event = yield sending;
    const answer = answerOf(exchange, event, asked);
    if (answer.ok) {
      tally.done += 1;
      return answer;
    }
    if (!AGAIN.has(answer.problem.code) || attempt >= retries) return answer;
    tally.retries += 1;
    const late = yield* pause(exchange, protocol.settleMillis, asked);
    if (late !== null) return { ok: false, problem: late };
  }
}

/** What is worth another try. */
const AGAIN: ReadonlySet<string> = new Set(['memory-timeout', 'memory-damaged', 'memory-busy', 'memory-unsent']);

/** Waits; null when nothing came meanwhile but late replies to `asked`. */
export function* pause(exchange: Exchange, millis: number, asked: MemoryCommand | null): Steps<Problem | null> {
  if (millis === 0) return null;
  for (let strays = 0; strays < MOST_STRAYS; strays += 1) {
    const event = yield { do: 'wait', millis };
    if (event.is === 'abort' && exchange.isCalm) continue;
    if (event.is !== 'stray') return event.is === 'waited' ? null : problemOf(event);
    const isLate = asked !== null && readReply(exchange.protocol, event.payload, asked).is !== 'other';
    if (isLate) exchange.tally.late += 1;
    else if (!exchange.isCalm) return stray();
  }
  return stray();
}

function answerOf(exchange: Exchange, event: SessionEvent, asked: MemoryCommand): Result<Uint8Array> {
  if (event.is !== 'reply') {
    const isPassed = event.is === 'stray' && exchange.isCalm;
    return { ok: false, problem: isPassed ? sayReply({ is: 'damaged' }) : problemOf(event) };
  }
  const reply = readReply(exchange.protocol, event.payload, asked);
  if (reply.is === 'good') return done(reply.data);
  if (reply.is === 'other' && exchange.isCalm) return { ok: false, problem: sayReply({ is: 'damaged' }) };
  return { ok: false, problem: sayReply(reply) };
}

function sayReply(reply: Exclude<MemoryReply, { is: 'good' }>): Problem {
  switch (reply.is) {
    case 'again':
      return say('memory-busy', 'The pad was busy time and again; try once more when it is at rest.');
    case 'damaged':
      return say('memory-damaged', 'The pad’s replies came damaged time and again; try another cable or socket.');
    case 'refused':
      return say(
        'memory-refused',
        `The pad refused the command (status ${reply.status}); check that its protocol file is the right one.`,
      );
    case 'other':
      return stray();
  }
}

function problemOf(event: SessionEvent): Problem {
  switch (event.is) {
    case 'lost':
    case 'unkept':
      return event.problem;
    case 'unsent':
      // A pad that has left cannot be asked again.
      return event.problem.code === 'pad-gone' ? event.problem : say('memory-unsent', event.problem.says);
    case 'abort':
      return say('memory-aborted', 'The session was ended on request.');
    case 'timeout':
      return say(
        'memory-timeout',
        'The pad did not answer in time, time and again; unplug it, plug it in and try again.',
      );
    case 'stray':
    case 'reply':
    case 'waited':
    case 'kept':
      return stray();
  }
}

function stray(): Problem {
  return say(
    'memory-stray',
    'A reply came that was not asked for: another program may be using the pad; close it and try again.',
  );
}

function say(code: string, says: string): Problem {
  return failed(code, says).problem;
}
