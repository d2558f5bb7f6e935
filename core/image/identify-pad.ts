/** Asks a pad what it is before anything else, and how full its battery is before anything is written. */
import { toHex } from '../hid/hex.ts';
import { done, failed, type Problem, type Result } from '../result.ts';
import { holdsBytes } from './memory-command.ts';
import type { Steps } from './memory-effects.ts';
import { ask, type Exchange } from './memory-exchange.ts';

export interface PadKind {
  /** Id of the memory map. */
  readonly map: string;
  /** Bytes that no other pad has, hex; null where the protocol knows none. */
  readonly unit: string | null;
}

export function* identifyPad(exchange: Exchange): Steps<Result<PadKind>> {
  exchange.tally.step = 'identify';
  const { identify, id } = exchange.protocol;
  const told = yield* ask(exchange, identify.code);
  if (!told.ok) return told;
  const kind = identify.kinds.find((one) => holdsBytes(told.value, one));
  if (kind === undefined)
    return failed(
      'memory-unknown-kind',
      `The pad is of a kind that the protocol ${id} does not name; nothing of its memory is touched.`,
    );
  const { unit } = identify;
  exchange.unit = unit === null ? null : toHex(told.value.subarray(unit.offset, unit.offset + unit.length));
  return done({ map: kind.map, unit: exchange.unit });
}

/** Null where the battery holds enough for a write, or the pad does not tell. */
export function* checkBattery(exchange: Exchange): Steps<Problem | null> {
  const { battery } = exchange.protocol;
  if (battery === null) return null;
  const told = yield* ask(exchange, battery.code);
  if (!told.ok) return told.problem;
  const percent = told.value[battery.offset] ?? 0;
  if (percent >= battery.least) return null;
  return failed(
    'memory-battery',
    `The pad's battery is at ${percent} % and a write wants ${battery.least} %; charge it, then write.`,
  ).problem;
}
