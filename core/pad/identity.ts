/** Who a pad says it is. */

export interface PadIdentity {
  readonly vendorId: number;
  readonly productId: number;
  readonly product: string;
  readonly serial: string | null;
  readonly transport: 'usb' | 'bluetooth' | 'simulated';
}
