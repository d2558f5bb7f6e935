/** Streams a report log from its file into typed columns: never held as one text, read to its last whole line. */
import { createReadStream } from 'node:fs';
import { TrackBuilder } from '../../core/capture/build-track.ts';
import type { Track } from '../../core/capture/track.ts';
import { LogReader } from '../../core/log/reader.ts';
import { failed, type Result } from '../../core/result.ts';

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
    return unreadable(file, thrown);
  }
  const ended = reader.end();
  if (!ended.ok) return ended;
  const track = builder.finish();
  return track.ok ? { ok: true, value: { track: track.value, cut: ended.value.cut } } : track;
}

function unreadable(file: string, thrown: unknown): ReturnType<typeof failed> {
  const code = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : String(thrown);
  if (code === 'ENOENT') return failed('file-missing', `There is no file ${file}; check the name.`);
  if (code === 'EACCES')
    return failed('file-no-permission', `The file ${file} may not be read; change its permissions.`);
  if (code === 'EISDIR') return failed('file-is-folder', `${file} is a folder; name a report log.`);
  return failed('file-unreadable', `The file ${file} cannot be read (${code}); check the disk.`);
}
