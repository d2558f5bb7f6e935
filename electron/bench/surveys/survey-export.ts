/** Gives a survey's log out in pieces. */
import { open } from 'node:fs/promises';
import { done, type Result } from '../../../core/result.ts';
import type { Reply } from '../../../shared/contract.ts';
import { storageProblem } from '../../store/storage-problem.ts';

/** A multiple of three, so that every piece but the last is base64 without padding. */
const PIECE_BYTES = 393_216;

export async function readLogPiece(file: string, from: number): Promise<Result<Reply<'surveys.export'>>> {
  try {
    const handle = await open(file);
    try {
      const { bytesRead, buffer } = await handle.read(Buffer.alloc(PIECE_BYTES), 0, PIECE_BYTES, from);
      const next = bytesRead < PIECE_BYTES ? null : from + bytesRead;
      return done({ piece: buffer.subarray(0, bytesRead).toString('base64'), next });
    } finally {
      await handle.close();
    }
  } catch (thrown) {
    return { ok: false, problem: storageProblem(thrown, 'read', file) };
  }
}
