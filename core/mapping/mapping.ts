/** What turns a raw count into a deflection: per axis minimum, centre and maximum in raw counts as reported. */
import type { StickId } from '../pad/stick.ts';

/** min < centre < max always; a mapping that is not stored may have a centre of .5. */
export interface AxisMapping {
  readonly min: number;
  readonly centre: number;
  readonly max: number;
}

export interface StickMapping {
  readonly x: AxisMapping;
  readonly y: AxisMapping;
}

export type PadMapping = Readonly<Partial<Record<StickId, StickMapping>>>;

/** Where the mapping that deflections stand under came from. */
export type MappingFrom = 'file' | 'stored' | 'range';
