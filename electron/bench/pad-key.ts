/** What a pad is remembered by from one run to the next. */
import type { PadIdentity } from '../../core/pad/identity.ts';

export function padKey({ vendorId, productId, serial }: PadIdentity): string {
  const hex = (value: number): string => value.toString(16).padStart(4, '0');
  return `${hex(vendorId)}:${hex(productId)}:${serial ?? ''}`;
}

/** The same where its memory was asked: `unit` tells pads without a serial number apart, null where the protocol knows none. */
export function unitKey(identity: PadIdentity, unit: string | null): string {
  return unit === null ? padKey(identity) : `${padKey(identity)}:${unit}`;
}
