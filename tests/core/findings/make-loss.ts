/** A loss of the signal as findings look at it: the stick stood at one place before and after it. */
import type { SignalLoss } from '../../../core/capture/evidence/signal-losses.ts';
import type { Pair } from '../../../core/pad/stick.ts';
import { HALF, REST } from './make-subject.ts';

/** At a place in half travels from the rest; `seconds` into the log, for 5 ms unless wished otherwise. */
export function lossAt(place: Pair, seconds: number, millis = 5): SignalLoss {
  const at = { x: REST.x + HALF * place.x, y: REST.y + HALF * place.y };
  const from = Math.round(1000 * seconds);
  const startUs = 1e6 * seconds;
  return { from, to: from + millis, startUs, endUs: startUs + 1000 * millis, before: at, after: at, size: 1 };
}

/** At the gate, in a direction. */
export function lossToward(degrees: number, seconds: number, share = 1): SignalLoss {
  const turn = (degrees * Math.PI) / 180;
  return lossAt({ x: share * Math.cos(turn), y: share * Math.sin(turn) }, seconds);
}
