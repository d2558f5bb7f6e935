/** Streams a report log from its file into typed columns: never held as one text, read to its last whole line. */
import { createReadStream } from 'node:fs';
import { TrackBuilder } from '../../../core/capture/evidence/build-track.ts';
import type { Track } from '../../../core/capture/evidence/track.ts';
import { LogReader } from '../../../core/log/reader.ts';
import type { Result } from '../../../core/result.ts';
import { storageProblem } from '../../store/storage-problem.ts';

const PIECE_BYTES = 1_048_576;

export interface TrackRead {
  readonly track: Track;
  /** The log ends inside a line: what came before it was read. */
  readonly cut: boolean;
}

export async function readTrack(file: string): Promise<Result<TrackRead>> {
  const builder = new TrackBuilder();
  const reader = new LogReader(builder);
  try {
    for await (const piece of createReadStream(file, { highWaterMark: PIECE_BYTES })) {
      const pushed = reader.push(piece as Uint8Array);
      if (!pushed.ok) return pushed;
    }
  } catch (thrown) {
    return { ok: false, problem: storageProblem(thrown, 'read', file) };
  }
  const ended = reader.end();
  if (!ended.ok) return ended;
  const track = builder.finish();
  return track.ok ? { ok: true, value: { track: track.value, cut: ended.value.cut } } : track;
}
