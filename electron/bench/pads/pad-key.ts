/** What a pad is remembered by from one run to the next. */
import { tellingSerial, type PadOwner } from '../../../core/pad/owner.ts';

/** Without a serial number that tells it apart: what it has in common with all of its kind. */
export function padKey({ vendorId, productId, serial }: Pick<PadOwner, 'vendorId' | 'productId' | 'serial'>): string {
  const hex = (value: number): string => value.toString(16).padStart(4, '0');
  return `${hex(vendorId)}:${hex(productId)}:${tellingSerial(serial) ?? ''}`;
}

/** The same where its memory was asked: the unit tells pads without a serial number apart. */
export function unitKey(pad: PadOwner): string {
  return pad.unit === null ? padKey(pad) : `${padKey(pad)}:${pad.unit}`;
}
