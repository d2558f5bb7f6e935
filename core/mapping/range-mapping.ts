/** The mapping that is taken where neither a file nor the pad gives one. */
import type { AxisField, StickFields } from '../pad/stick.ts';
import type { AxisMapping, StickMapping } from './mapping.ts';

/**
 * The fields' logical range with its middle as centre, which may lie between two counts (127.5 for 0 … 255).
 * For fields that grow right or up this is the linear normalisation 2(v − min)/(max − min) − 1 of W3C's Gamepad.
 */
export function rangeMapping(fields: StickFields): StickMapping {
  return { x: rangeAxis(fields.x), y: rangeAxis(fields.y) };
}

function rangeAxis(field: AxisField): AxisMapping {
  return { min: field.minimum, centre: (field.minimum + field.maximum) / 2, max: field.maximum };
}
