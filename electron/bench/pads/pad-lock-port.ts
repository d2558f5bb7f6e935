/** One process at a time captures from a pad or writes to it. */
import type { PadIdentity } from '../../../core/pad/identity.ts';
import type { Problem, Result } from '../../../core/result.ts';

export interface PadLock {
  /**
   * Takes the pad, or says who has it; the value gives it free again. `lost` is called once, before that, when the pad
   * turns out to be another's: whoever took it must send the pad nothing more, and say why.
   */
  take(pad: PadIdentity, lockKey: string, lost: (problem: Problem) => void): Promise<Result<() => Promise<void>>>;
}
