/** Whose numbers these are: what surveys, mappings, patches, images and journals know of their pad, and how two of them compare. */
import { z } from 'zod';
import type { PadIdentity } from './identity.ts';

/** What a file says of the pad that its numbers are of. */
export interface PadOwner {
  readonly vendorId: number;
  readonly productId: number;
  /** Null where the pad tells none, or one that is none. */
  readonly serial: string | null;
  /** Bytes of its memory that no other pad has, hex; null where they were not read or its protocol knows none. */
  readonly unit: string | null;
}

const missingIsNull = z
  .string()
  .nullish()
  .transform((text) => text ?? null);

/** Other keys, such as the pad's name, are left out. */
export const ownerSchema = z.object({
  vendorId: z.number().int().min(0).max(0xffff),
  productId: z.number().int().min(0).max(0xffff),
  serial: missingIsNull,
  unit: missingIsNull,
});

/**
 * `same`: a serial number or a unit is known on both sides and equal. `other`: the product differs, or a serial number or unit
 * that both know. `unknown`: the product is the same and nothing known on both sides tells the two apart.
 */
export type Kinship = 'same' | 'unknown' | 'other';

/** Null on either side is a pad of which nothing is known. */
export function kinshipOf(one: PadOwner | null, other: PadOwner | null): Kinship {
  if (one === null || other === null) return 'unknown';
  if (one.vendorId !== other.vendorId || one.productId !== other.productId) return 'other';
  const told = [compare(tellingSerial(one.serial), tellingSerial(other.serial)), compare(one.unit, other.unit)];
  if (told.includes('other')) return 'other';
  return told.includes('same') ? 'same' : 'unknown';
}

export function ownerOf({ vendorId, productId, serial }: PadIdentity, unit: string | null): PadOwner {
  return { vendorId, productId, serial, unit };
}

/** E.g. `1209:000a, serial number healthy-1` or `1209:000a, serial number not known`. */
export function sayOwner({ vendorId, productId, serial, unit }: PadOwner): string {
  const hex = (value: number): string => value.toString(16).padStart(4, '0');
  const known = tellingSerial(serial);
  const told = known === null ? (unit === null ? 'serial number not known' : `unit ${unit}`) : `serial number ${known}`;
  return `${hex(vendorId)}:${hex(productId)}, ${told}`;
}

/** Four or more of one letter, e.g. all zeros, is what makers write who number nothing (common practice): it tells no pads apart. */
export function tellingSerial(serial: string | null): string | null {
  return serial === null || /^(.)\1{3,}$/u.test(serial) || serial === '' ? null : serial;
}

function compare(one: string | null, other: string | null): Kinship {
  if (one === null || other === null) return 'unknown';
  return one === other ? 'same' : 'other';
}
