/** What a pad makes of its converter's counts before it reports them. */
import { wired } from './converter.ts';
import { fieldRange } from './descriptor.ts';
import type { PadPlan } from './pad-plan.ts';
import { sizeOf, times, type Vec } from './plane.ts';
import type { AxisNumbers, StoredNumbers } from './stored-numbers.ts';

/** Counts of the converter to counts of the report's fields: full field at the stored edges. */
export function reportedOf(plan: PadPlan, stored: StoredNumbers, counts: Vec): Vec {
  const share = { x: shareOf(stored.x, counts.x), y: shareOf(stored.y, counts.y) };
  const { least, greatest } = fieldRange(plan);
  const middle = plan.signed ? 0 : (greatest + 1) / 2;
  const field = (part: number): number => Math.round(middle + part * (part >= 0 ? greatest - middle : middle - least));
  const { x, y } = banded(plan, share);
  const reported = wired(plan, { x: field(x), y: field(y) }, least + greatest);
  return { x: Math.min(greatest, Math.max(least, reported.x)), y: Math.min(greatest, Math.max(least, reported.y)) };
}

function shareOf({ min, centre, max }: AxisNumbers, count: number): number {
  const share = count >= centre ? (count - centre) / (max - centre) : (count - centre) / (centre - min);
  return Math.min(1, Math.max(-1, share));
}

/** `dead` starts from nothing at the edge of the band; `snap` jumps there to what it is. */
function banded({ band }: PadPlan, share: Vec): Vec {
  if (band === null) return share;
  const scaleOf = (size: number): number => {
    if (size <= band.size) return 0;
    return band.kind === 'snap' ? 1 : (size - band.size) / (1 - band.size) / size;
  };
  if (band.round) {
    const { x, y } = times(share, scaleOf(sizeOf(share)));
    return { x: Math.min(1, Math.max(-1, x)), y: Math.min(1, Math.max(-1, y)) };
  }
  return { x: share.x * scaleOf(Math.abs(share.x)), y: share.y * scaleOf(Math.abs(share.y)) };
}
