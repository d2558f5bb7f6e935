/** What is left between the gate and the limits of the fields. */
import type { Turn } from '../capture/evidence/evidence.ts';
import type { StickFields } from '../pad/stick.ts';
import type { RimMeasure } from './rim-measure.ts';

/** Counts between the extremes of all turns and the field's limits, named by the raw count's own edges. Null without a turn. */
export function headroom(turns: readonly Turn[], fields: StickFields): RimMeasure['headroom'] {
  if (turns.length === 0) return null;
  const extremes = turns.map((turn) => turn.extremes);
  return {
    xMin: Math.min(...extremes.map((one) => one.xMin)) - fields.x.minimum,
    xMax: fields.x.maximum - Math.max(...extremes.map((one) => one.xMax)),
    yMin: Math.min(...extremes.map((one) => one.yMin)) - fields.y.minimum,
    yMax: fields.y.maximum - Math.max(...extremes.map((one) => one.yMax)),
  };
}
