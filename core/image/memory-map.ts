/** Where a pad's memory holds its calibration: data, so that a technician can read, write, share and find it. */
import type { StickId } from '../pad/stick.ts';
import type { ChecksumKind } from './checksum.ts';
import type { StickCodec } from './stick-codec.ts';

/** A stretch of bytes of an image. */
export interface ByteRange {
  readonly offset: number;
  readonly length: number;
}

export type LayerName = 'factory' | 'user';
export const LAYERS: readonly LayerName[] = ['factory', 'user'];

/** Bytes that say whether a layer is to be used. */
export interface Marker {
  readonly offset: number;
  /** Hex of the bytes where the layer is valid. */
  readonly valid: string;
  /** Hex of the bytes where it was never written; null where that is not known. */
  readonly empty: string | null;
}

export interface Checksum {
  readonly kind: ChecksumKind;
  readonly offset: number;
  readonly endian: 'little' | 'big';
  readonly covers: ByteRange;
}

export interface Layer {
  readonly marker: Marker | null;
  readonly checksum: Checksum | null;
  readonly sticks: Readonly<Partial<Record<StickId, { readonly offset: number; readonly codec: StickCodec }>>>;
}

export interface MemoryMap {
  readonly kind: 'stickwright-memory-map';
  readonly version: 1;
  readonly id: string;
  readonly name: string;
  /** `unproven` until a write was read back and a survey afterwards agreed. */
  readonly proof: 'proven' | 'unproven';
  /** Of the whole image, bytes. */
  readonly size: number;
  /** Bytes that every image of this family has. */
  readonly fingerprint: readonly { readonly offset: number; readonly bytes: string }[];
  readonly layers: Readonly<Partial<Record<LayerName, Layer>>>;
  /** Which layers a kind of host looks at, in order: it takes the first that is valid. */
  readonly hosts: readonly { readonly name: string; readonly reads: readonly LayerName[] }[];
  /** Bytes that change by themselves; a comparison passes over them. */
  readonly volatile: readonly ByteRange[];
  readonly plausible: {
    readonly bits: number;
    /** Counts from the centre to either edge, at least. */
    readonly leastSpan: number;
  };
  /**
   * Out of how many readings that fitted the image about equally well this one was chosen by hand: a wrong one exchanges sticks, axes or
   * spans. Left out where there was one.
   */
  readonly chosenFrom?: number;
}
