/** The one interface between a pad and the bench; HID and the simulated pad are its siblings. */
import type { PadIdentity } from '../../../core/pad/identity.ts';
import type { Problem, Result } from '../../../core/result.ts';

/** What a transport tells. Bytes are lent for the call only: copy what you keep. */
export interface TransportListener {
  /** Stamped on arrival: whole microseconds of the monotonic clock. Payload without the report id (0 where there is none). */
  report(atMicros: number, reportId: number, payload: Uint8Array): void;
  /** Reports known or suspected to be missing; `lost` is null when how many is not known. */
  gap(atMicros: number, lost: number | null): void;
  /** The pad is gone or failed; nothing follows. Codes: `pad-gone`, `pad-protocol`. */
  lost(problem: Problem): void;
}

export interface Transport {
  /** Stable within one run of the program, e.g. the device path; never shown to the renderer. */
  readonly key: string;
  readonly identity: PadIdentity;
  /** What a lock names the pad by for every program of this machine; missing where no other program can meet the pad. */
  readonly lockKey?: string;
  /** Report descriptor, or null where the system does not give it. */
  readonly descriptor: Uint8Array | null;
  /** Problems told apart: `pad-no-permission` (with the udev rule), `pad-busy`, `pad-gone`, `pad-protocol`. */
  open(listener: TransportListener): Promise<Result<void>>;
  sendOutput(reportId: number, payload: Uint8Array): Promise<Result<void>>;
  sendFeature(reportId: number, payload: Uint8Array): Promise<Result<void>>;
  readFeature(reportId: number, length: number): Promise<Result<Uint8Array>>;
  /** May be called at any time and more than once. */
  close(): Promise<void>;
}
