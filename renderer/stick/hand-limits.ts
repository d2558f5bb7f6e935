/** What a mapping made on the Workbench has to fit. */
import type { HandLimits } from '../../core/mapping/set-number.ts';
import type { Domain, StickFields } from '../../core/pad/stick.ts';

/**
 * Sensor counts may end up in a layer of the pad, which takes whole counts that its fields can report. Reported counts never
 * do: their mapping is for the host alone and may have a centre between two counts.
 */
export function handLimits(fields: StickFields, domain: Domain): HandLimits {
  const { x, y } = fields;
  const layer =
    domain === 'sensor'
      ? { whole: true, least: Math.min(x.minimum, y.minimum), greatest: Math.max(x.maximum, y.maximum) }
      : null;
  return { fields, layer };
}
