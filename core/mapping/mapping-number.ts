/** The six numbers of a stick's mapping by name. */
import type { StickMapping } from './mapping.ts';

export const MAPPING_NUMBERS = ['x.min', 'x.centre', 'x.max', 'y.min', 'y.centre', 'y.max'] as const;
export type MappingNumber = (typeof MAPPING_NUMBERS)[number];

export function axisOf(of: MappingNumber): 'x' | 'y' {
  return of.startsWith('x') ? 'x' : 'y';
}

export function edgeOf(of: MappingNumber): 'min' | 'centre' | 'max' {
  return of.endsWith('min') ? 'min' : of.endsWith('max') ? 'max' : 'centre';
}

export function numberOf(mapping: StickMapping, of: MappingNumber): number {
  return mapping[axisOf(of)][edgeOf(of)];
}

/** The mapping with one number put in the place of another; nothing is checked. */
export function withNumber(mapping: StickMapping, of: MappingNumber, value: number): StickMapping {
  const axis = axisOf(of);
  return { ...mapping, [axis]: { ...mapping[axis], [edgeOf(of)]: value } };
}

export function sameMapping(one: StickMapping, other: StickMapping): boolean {
  return MAPPING_NUMBERS.every((of) => numberOf(one, of) === numberOf(other, of));
}
