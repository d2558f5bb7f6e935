/** The exchange that switches a pad's full reports on, step by step as its profile says. */
import { readHex } from '../../../core/hid/hex.ts';
import type { Profile, StartStep } from '../../../core/pad/profile.ts';
import { startSteps } from '../../../core/pad/start-steps.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Transport } from './transport.ts';
import type { Clock } from '../time/clock.ts';

/** Hears input reports while the exchange runs. */
export type ReportHearer = (reportId: number, payload: Uint8Array) => void;

interface Exchange {
  readonly transport: Transport;
  readonly clock: Clock;
  /** Hands every input report to the hearer until the returned function is called. */
  readonly overhear: (hear: ReportHearer) => () => void;
  readonly sent: (reportId: number, payload: Uint8Array) => void;
}

/** Sends every step and awaits what must come back. `pad-silent` where a reply stays out. */
export async function startPad(profile: Profile, exchange: Exchange): Promise<Result<void>> {
  const steps = startSteps(profile, exchange.transport.identity.transport);
  for (const [index, step] of steps.entries()) {
    const payload = stepPayload(step, index);
    if (!payload.ok) return payload;
    const reply = step.reply === null ? null : awaitReply(step, step.reply, exchange);
    if (reply !== null && !reply.ok) return reply;
    const { transport } = exchange;
    const sent = await (step.kind === 'output'
      ? transport.sendOutput(step.reportId, payload.value)
      : transport.sendFeature(step.reportId, payload.value));
    if (!sent.ok) return sent;
    exchange.sent(step.reportId, payload.value);
    if (reply !== null && !(await reply.value))
      return failed(
        'pad-silent',
        `The pad did not answer step ${index + 1} of ${steps.length} of its start; unplug it, plug it in and open it again.`,
      );
  }
  return done(undefined);
}

/** Bytes of a step; each one written `nn` is the number of the step. */
function stepPayload(step: StartStep, index: number): Result<Uint8Array> {
  return readHex(step.hex.replaceAll('nn', (index & 0xff).toString(16).padStart(2, '0')));
}

/** Resolves with true when the reply came, false when it did not in time. Listens from before the step is sent. */
function awaitReply(
  step: StartStep,
  reply: NonNullable<StartStep['reply']>,
  { clock, overhear }: Exchange,
): Result<Promise<boolean>> {
  const wanted = readHex(reply.hex);
  if (!wanted.ok) return wanted;
  const came = new Promise<boolean>((resolve) => {
    const finish = (value: boolean): void => {
      stop();
      cancel();
      resolve(value);
    };
    const cancel = clock.after(step.timeoutMillis, () => finish(false));
    const stop = overhear((reportId, payload) => {
      if (reportId === reply.reportId && holds(payload, reply.offset, wanted.value)) finish(true);
    });
  });
  return done(came);
}

function holds(payload: Uint8Array, offset: number, wanted: Uint8Array): boolean {
  return wanted.every((byte, index) => payload[offset + index] === byte);
}
