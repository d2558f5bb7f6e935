/**
 * How a family of pads lets its memory be read and written over output and input reports: data, so that a technician can
 * read, write and share it. Offsets count bytes of a report's payload, without its id.
 */
import type { PadIdentity } from '../pad/identity.ts';
import type { ChecksumKind } from './checksum.ts';
import type { ByteRange } from './memory-map.ts';

/** A whole number in a report. */
export interface NumberPlace extends ByteRange {
  readonly endian: 'little' | 'big';
}

/** Over a stretch of the payload; bytes beyond the data in use are 0. */
export interface ReportChecksum {
  readonly kind: ChecksumKind;
  readonly offset: number;
  readonly endian: 'little' | 'big';
  readonly covers: ByteRange;
}

/** Bytes that stand at an offset, hex. */
export interface FixedBytes {
  readonly offset: number;
  readonly bytes: string;
}

interface ReportPlaces {
  readonly reportId: number;
  /** Of the payload. */
  readonly byteLength: number;
  /** Byte that counts up with each command and is echoed in its reply; null where there is none. */
  readonly sequence: number | null;
  /** Offset of the data. */
  readonly data: number;
  readonly checksum: ReportChecksum | null;
}

export interface CommandPlaces extends ReportPlaces {
  /** Offset of the command byte. */
  readonly code: number;
  readonly address: NumberPlace;
  /** Bytes of data to read or write. */
  readonly length: NumberPlace;
}

export interface ReplyPlaces extends ReportPlaces {
  /** What tells a reply from the pad's other reports of the same id. */
  readonly holds: readonly FixedBytes[];
  /** Where the command byte is echoed, and what the pad adds to it (modulo 256). */
  readonly code: { readonly offset: number; readonly plus: number };
  /** Echoed; null where it is not. */
  readonly address: NumberPlace | null;
  readonly length: NumberPlace | null;
  /** `good`: done. `again`: the pad did nothing and may be asked once more. Any other value is a refusal. */
  readonly status: { readonly offset: number; readonly good: readonly number[]; readonly again: readonly number[] };
}

type Connection = PadIdentity['transport'];

export interface MemoryProtocol {
  readonly kind: 'stickwright-memory-protocol';
  readonly version: 1;
  readonly id: string;
  readonly name: string;
  readonly pads: readonly { readonly vendorId: number; readonly productId: number }[];
  /** Connections over which the memory may be read, and those over which it may be written. */
  readonly reads: readonly Connection[];
  readonly writes: readonly Connection[];
  readonly command: CommandPlaces;
  readonly reply: ReplyPlaces;
  readonly identify: {
    readonly code: number;
    /** Which bytes of the reply's data mean which memory map, by its id; the first that fits counts. */
    readonly kinds: readonly (FixedBytes & { readonly map: string })[];
    /** Bytes of the reply's data that no two pads share; null where there are none. */
    readonly unit: ByteRange | null;
  };
  /** `block`: most bytes a command. */
  readonly read: { readonly code: number; readonly block: number };
  /** `page`: a write never crosses a multiple of it; null where it may. */
  readonly write: { readonly code: number; readonly block: number; readonly page: number | null };
  /** One byte of the reply's data at `offset`, percent; below `least` nothing is written. Null where the pad does not tell. */
  readonly battery: { readonly code: number; readonly offset: number; readonly least: number } | null;
  /** Between a reply and the next command. */
  readonly spacingMillis: number;
  readonly timeoutMillis: { readonly read: number; readonly write: number };
  /** After a reply stayed out, a late one is waited for so long before the command is sent again. */
  readonly settleMillis: number;
  /** How often a command is sent again. */
  readonly retries: number;
}
