/** Lines at the end of a file, each on the disk before it counts: a last line that was cut off never stays. */
import { open, unlink, type FileHandle } from 'node:fs/promises';
import { OWN_FILE } from './own-folder.ts';
import { systemError } from './whole-file.ts';

const NEWLINE = 0x0a;
const PIECE_BYTES = 4096;

/**
 * Makes the file where it is not there, or refuses with EEXIST where `isNew`. The line begins where the last whole one ends; one that
 * the disk takes only in part is cut off again, and a file that was made for it is gone again. Throws what the file system throws.
 */
export async function appendLine(file: string, value: object, isNew = false): Promise<void> {
  const handle = await open(file, isNew ? 'ax+' : 'a+', OWN_FILE);
  try {
    const whole = await endOfLines(handle);
    const line = `${JSON.stringify(value)}\n`;
    try {
      await handle.writeFile(line);
      await handle.sync();
      if ((await handle.stat()).size < whole + Buffer.byteLength(line))
        throw systemError('ENOSPC', 'the disk kept only a part');
    } catch (thrown) {
      // Where even that fails the next line cuts it off, and who reads leaves it out.
      await (isNew ? unlink(file) : handle.truncate(whole)).catch(() => undefined);
      throw thrown;
    }
  } finally {
    await handle.close();
  }
}

/** Where the last whole line ends; what stands behind it is cut off. */
async function endOfLines(handle: FileHandle): Promise<number> {
  const { size } = await handle.stat();
  let whole = size;
  while (whole > 0) {
    const from = Math.max(0, whole - PIECE_BYTES);
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(whole - from), 0, whole - from, from);
    const last = buffer.subarray(0, bytesRead).lastIndexOf(NEWLINE);
    whole = last < 0 ? from : from + last + 1;
    if (last >= 0) break;
  }
  if (whole < size) await handle.truncate(whole);
  return whole;
}
