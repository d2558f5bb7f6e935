/** One process at a time captures from a pad or writes to it. */
import type { PadIdentity } from '../../core/pad/identity.ts';
import type { Result } from '../../core/result.ts';

export interface PadLock {
  /** Takes the pad, or says who has it; the value gives it free again. */
  take(pad: PadIdentity, lockKey: string): Promise<Result<() => Promise<void>>>;
}
