/** A thread of its own for work on whole logs and for proposals, so that reports go on being stamped in time. */
import { parentPort } from 'node:worker_threads';
import { propose } from '../../core/proposal/propose.ts';
import type { Limits } from '../../core/findings/limits.ts';
import type { StickEvidence } from '../../core/capture/evidence.ts';
import type { ProposalWish } from '../../core/proposal/proposal.ts';
import { measureForScreen } from './measured.ts';
import { readTrack } from './read-track.ts';

export type Work =
  | { readonly id: number; readonly does: 'measure'; readonly file: string; readonly limits: Limits }
  | { readonly id: number; readonly does: 'propose'; readonly evidence: StickEvidence; readonly wish: ProposalWish };

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
  if (work.does === 'propose') return propose(work.evidence, work.wish);
  const read = await readTrack(work.file);
  return read.ok ? { ok: true, value: measureForScreen(read.value.track, work.limits) } : read;
}
