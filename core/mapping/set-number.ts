/** One number of a mapping changed by hand: refused by name where the mapping would not hold, or kept within what holds. */
import type { StickFields } from '../pad/stick.ts';
import { done, failed, type Result } from '../result.ts';
import { checkMapping } from './check-mapping.ts';
import type { LayerLimits } from './layer-limits.ts';
import { axisOf, edgeOf, MAPPING_NUMBERS, numberOf, withNumber, type MappingNumber } from './mapping-number.ts';
import type { StickMapping } from './mapping.ts';

/** What a mapping made by hand has to fit: the counts that the fields can report, and the layer it is meant for, if any. */
export interface HandLimits {
  readonly fields: StickFields;
  readonly layer: LayerLimits | null;
}

/** Refuses by name what `checkMapping` refuses, and counts that the field of their axis never reports. */
export function checkByHand(mapping: StickMapping, { fields, layer }: HandLimits): Result<StickMapping> {
  const problem = checkMapping(mapping, layer);
  if (problem !== null) return { ok: false, problem };
  for (const of of MAPPING_NUMBERS) {
    const { minimum, maximum } = fields[axisOf(of)];
    const value = numberOf(mapping, of);
    if (value < minimum || value > maximum)
      return failed(
        'mapping-outside-field',
        `The mapping cannot be used: ${of} is ${value}; the field reports ${minimum} to ${maximum}, choose a count within.`,
      );
  }
  return done(mapping);
}

/** The mapping with the number set, or why it cannot be. */
export function setNumber(
  mapping: StickMapping,
  of: MappingNumber,
  value: number,
  limits: HandLimits,
): Result<StickMapping> {
  return checkByHand(withNumber(mapping, of, value), limits);
}

/** The nearest whole count to a value that the number can take while the others stay: what a dragged mark stops at. */
export function nearestNumber(mapping: StickMapping, of: MappingNumber, value: number, limits: HandLimits): number {
  const { fields, layer } = limits;
  const axis = mapping[axisOf(of)];
  const field = fields[axisOf(of)];
  const edge = edgeOf(of);
  const least = Math.max(field.minimum, layer?.least ?? -Infinity);
  const greatest = Math.min(field.maximum, layer?.greatest ?? Infinity);
  const low = edge === 'min' ? least : Math.floor(edge === 'centre' ? axis.min : axis.centre) + 1;
  const high = edge === 'max' ? greatest : Math.ceil(edge === 'centre' ? axis.max : axis.centre) - 1;
  return Math.min(Math.max(Math.round(value), low), high);
}
