/** Whether a pad may be written to: switched on by the technician for this very pad, and connected by what takes writes. */
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { done, type Problem, type Result } from '../../../core/result.ts';
import type { WriteSwitch } from '../../store/write-switch.ts';
import { padKey } from '../pads/pad-key.ts';
import { tellingSerial } from '../../../core/pad/owner.ts';
import type { PadSession } from '../pads/pad-session.ts';
import { notOver, switchedOff } from './write-refusals.ts';

export class WriteGate {
  readonly #lasting: Pick<WriteSwitch, 'isOn' | 'set'>;
  /** Pads without a serial number cannot be told from their like: they are switched on until they leave or are closed. */
  readonly #untilLeft = new WeakSet<PadSession>();

  constructor(lasting: Pick<WriteSwitch, 'isOn' | 'set'>) {
    this.#lasting = lasting;
  }

  async isOn(session: PadSession): Promise<boolean> {
    const { identity } = session.source.transport;
    return tellingSerial(identity.serial) === null
      ? this.#untilLeft.has(session)
      : this.#lasting.isOn(padKey(identity));
  }

  async set(session: PadSession, on: boolean): Promise<Result<void>> {
    const { identity } = session.source.transport;
    if (tellingSerial(identity.serial) !== null) return this.#lasting.set(padKey(identity), on);
    if (on) this.#untilLeft.add(session);
    else this.#untilLeft.delete(session);
    return done(undefined);
  }

  /** Null where it may. */
  async refusal(session: PadSession, protocol: MemoryProtocol): Promise<Problem | null> {
    return (await this.isOn(session)) ? notOver(session, protocol) : switchedOff();
  }
}
