/** A thread of its own for work on whole logs and for proposals, so that reports go on being stamped in time. */
import { parentPort } from 'node:worker_threads';
import { findPlaces } from '../../../core/image/rank-places.ts';
import type { GateSource } from '../../../core/findings/outline/known-gate.ts';
import type { PadMapping } from '../../../core/mapping/mapping.ts';
import { logStrip } from '../../../core/plot/log-strip.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import { done, failed } from '../../../core/result.ts';
import type { Limits } from '../../../core/findings/limits.ts';
import { readGateLogs, tellGate, type GateLogs } from './gate-logs.ts';
import { measureForScreen } from './measured.ts';
import { proposeFor, type AskedStick, type Wish } from './propose-for.ts';
import { readTrack } from './read-track.ts';

export interface StripWish {
  readonly stick: StickId;
  readonly fromUs: number;
  readonly toUs: number;
  readonly slices: number;
}

export type Work =
  | { readonly id: number; readonly does: 'strip'; readonly file: string; readonly wish: StripWish }
  | {
      readonly id: number;
      readonly does: 'measure';
      readonly file: string;
      readonly limits: Limits;
      readonly gates: GateLogs;
    }
  | {
      readonly id: number;
      readonly does: 'tells-gate';
      readonly file: string;
      readonly stick: StickId;
      readonly from: GateSource;
    }
  | { readonly id: number; readonly does: 'find'; readonly image: Uint8Array; readonly measured: PadMapping }
  | {
      readonly id: number;
      readonly does: 'propose';
      readonly asked: AskedStick;
      readonly wish: Wish;
      readonly limits: Limits;
    };

parentPort?.on('message', (work: Work) => {
  void perform(work).then(
    (result) => parentPort?.postMessage({ id: work.id, result }),
    (thrown: unknown) => {
      const words = thrown instanceof Error ? thrown.message : String(thrown);
      const says = `The measures could not be worked out (${words}); keep the log and report this.`;
      parentPort?.postMessage({ id: work.id, result: { ok: false, problem: { code: 'measure-fault', says } } });
    },
  );
});

async function perform(work: Work): Promise<unknown> {
  if (work.does === 'propose') return proposeFor(work.asked, work.wish, work.limits);
  if (work.does === 'find') return done(findPlaces(work.image, work.measured));
  const read = await readTrack(work.file);
  if (!read.ok) return read;
  const { track } = read.value;
  if (work.does === 'measure') return done(measureForScreen(track, work.limits, await readGateLogs(work.gates)));
  if (work.does === 'tells-gate') {
    const told = tellGate(track, work.stick, work.from);
    return told.ok ? done(undefined) : told;
  }
  const { stick, fromUs, toUs, slices } = work.wish;
  const readings = track.sticks[stick];
  if (readings === undefined) return failed('stick-unknown', `The log has no ${stick} stick; choose the other one.`);
  return done(logStrip(readings, fromUs, toUs, slices));
}
