/** Which mapping a stick's deflections stand under. */
import type { StickFields } from '../pad/stick.ts';
import type { MappingFrom, StickMapping } from './mapping.ts';
import { rangeMapping } from './range-mapping.ts';

/** The one given (from a file), else the one the pad stores, else the fields' logical range. */
export function chooseMapping(
  fields: StickFields,
  given: StickMapping | undefined,
  stored: StickMapping | undefined,
): { readonly mapping: StickMapping; readonly mappingFrom: MappingFrom } {
  if (given !== undefined) return { mapping: given, mappingFrom: 'file' };
  if (stored !== undefined) return { mapping: stored, mappingFrom: 'stored' };
  return { mapping: rangeMapping(fields), mappingFrom: 'range' };
}
