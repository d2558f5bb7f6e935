/** Makes the slot that readings are decoded into. */
import type { ReadingSlot } from './layout.ts';

/** Everything NaN, no button down. */
export function createReadingSlot(): ReadingSlot {
  return {
    axes: new Float64Array(4).fill(Number.NaN),
    triggers: new Float64Array(2).fill(Number.NaN),
    hat: new Float64Array(1).fill(Number.NaN),
    buttons: new Uint32Array(4),
  };
}
