/** The first line of a report log. */
import type { PadIdentity } from '../pad/identity.ts';
import type { PadOwner } from '../pad/owner.ts';
import type { Domain } from '../pad/stick.ts';

export type Stage = 'received' | 'fitted' | 'calibrated' | 'recheck';

export interface LogHeader {
  readonly kind: 'stickwright-report-log';
  readonly version: 1;
  readonly program: string | null;
  readonly startedAt: string;
  readonly stage: Stage | null;
  readonly domain: Domain;
  readonly pad: PadIdentity & Pick<PadOwner, 'unit'>;
  /** The report descriptor as hex, or null. */
  readonly descriptor: string | null;
  /** Id of the profile the session used, or null. */
  readonly profile: string | null;
  /** True where whoever wrote the log puts the mark `end` behind all else when it is ended in order. */
  readonly endMark?: boolean;
}
