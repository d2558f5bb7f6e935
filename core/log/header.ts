/** The first line of a report log (DESIGN, files a user owns). */
import type { Domain } from '../pad/stick.ts';

export type Stage = 'received' | 'fitted' | 'calibrated' | 'recheck';

export interface PadIdentity {
  readonly vendorId: number;
  readonly productId: number;
  readonly product: string;
  readonly serial: string | null;
  readonly transport: 'usb' | 'bluetooth' | 'simulated';
}

export interface LogHeader {
  readonly kind: 'stickwright-report-log';
  readonly version: 1;
  readonly program: string | null;
  readonly startedAt: string;
  readonly stage: Stage | null;
  readonly domain: Domain;
  readonly pad: PadIdentity;
  /** The report descriptor as hex, or null. */
  readonly descriptor: string | null;
  /** Id of the profile the session used, or null. */
  readonly profile: string | null;
}
