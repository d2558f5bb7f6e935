/** What a consumer makes of a measured trigger. */
import { compileChain } from './run-chain.ts';
import type { Chain } from './chain.ts';
import type { Consumer } from './consumer.ts';
import { stagesInto } from './judge-consumer.ts';
import { outputOf } from './output.ts';

/** Counts of a trigger as seen, within the limits of its field. */
export interface TriggerExtent {
  readonly min: number;
  readonly max: number;
  readonly fieldMinimum: number;
  readonly fieldMaximum: number;
}

export interface TriggerAnswer {
  /** Output while the trigger is free; anything but 0 leaks. */
  readonly atRest: number;
  /** Output at the furthest that was seen. */
  readonly atFull: number;
  readonly reaches: boolean | null;
}

/**
 * A trigger's position is (count − least)/(greatest − least) of its field, 0 … 1, and meets the chain on the x axis. Null
 * where the consumer has no chain for triggers or the field encloses nothing.
 */
export function judgeTrigger(
  extent: TriggerExtent,
  consumer: Consumer,
  driver: Pick<Chain, 'stages'> | null,
): TriggerAnswer | null {
  const own = consumer.chains.trigger;
  const span = extent.fieldMaximum - extent.fieldMinimum;
  if (own === undefined || !(span > 0)) return null;
  const run = compileChain({ stages: stagesInto(consumer, own.stages, driver) });
  const out = new Float64Array(2);
  const output = (count: number): number => outputOf(run, (count - extent.fieldMinimum) / span, 0, out);
  const atFull = output(extent.max);
  return {
    atRest: output(extent.min),
    atFull,
    reaches: consumer.needs === null ? null : atFull >= consumer.needs,
  };
}
