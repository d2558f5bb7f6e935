/** A place where an image may hold the calibration of measured sticks. */
import type { StickMapping } from '../mapping/mapping.ts';
import type { StickId } from '../pad/stick.ts';
import type { StickCodec } from './stick-codec.ts';

export interface FoundStick {
  readonly stick: StickId;
  readonly codec: StickCodec;
  readonly offset: number;
  readonly mapping: StickMapping;
  /** Largest difference of one of its six numbers, as they are stored, from the measured one; counts. */
  readonly furthest: number;
}

/** One way to take the bytes of a place. */
export interface PlaceReading {
  readonly sticks: Readonly<Partial<Record<StickId, FoundStick>>>;
  /** Bytes from the left stick to the right one; null for a single stick. */
  readonly distance: number | null;
}

export interface FoundPlace {
  /** The nearest first; where there are several, they fit about as well, and only one of them is right. */
  readonly readings: readonly PlaceReading[];
  /** What tells which of several readings is right, one sentence; null for a single one. */
  readonly decides: string | null;
  /** Offsets of other places that read alike: another layer, or what repeats. They add nothing to the chance. */
  readonly again: readonly number[];
  /** How often chance alone would find a place that fits as well in this image; see `chancesOf`. */
  readonly chance: number;
}
