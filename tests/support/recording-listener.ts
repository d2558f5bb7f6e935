/** A transport listener that keeps everything it hears, each entry as one line of words. */
import type { Problem } from '../../core/result.ts';
import type { TransportListener } from '../../electron/bench/pads/transport.ts';

export class RecordingListener implements TransportListener {
  readonly heard: string[] = [];
  readonly reportTimes: number[] = [];
  readonly problems: Problem[] = [];

  report(atMicros: number, reportId: number, payload: Uint8Array): void {
    this.reportTimes.push(atMicros);
    this.heard.push(`report ${atMicros} ${reportId} ${Buffer.from(payload).toString('hex')}`);
  }

  gap(atMicros: number, lost: number | null): void {
    this.heard.push(`gap ${atMicros} ${lost}`);
  }

  lost(problem: Problem): void {
    this.problems.push(problem);
    this.heard.push(`lost ${problem.code}`);
  }
}
