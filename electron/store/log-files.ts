/** The few things a recorder asks of the file system, so that a test can make each of them fail. */
import { open, unlink } from 'node:fs/promises';
import { OWN_FILE } from './own-folder.ts';

export interface LogFile {
  /** Bytes taken, which may be fewer than given. */
  write(bytes: Uint8Array): Promise<number>;
  truncate(length: number): Promise<void>;
  /** Down to the disk itself. */
  sync(): Promise<void>;
  close(): Promise<void>;
}

export interface LogFiles {
  /** Makes a new file; one that is there already is refused with EEXIST. */
  create(file: string): Promise<LogFile>;
  remove(file: string): Promise<void>;
}

/** Logs of the data folder: the account's alone. */
export const systemFiles: LogFiles = { create: (file) => create(file, OWN_FILE), remove: unlink };

/** Logs at a place that the person named: with the rights that the umask leaves. */
export const sharedFiles: LogFiles = { create: (file) => create(file, 0o666), remove: unlink };

async function create(file: string, mode: number): Promise<LogFile> {
  const handle = await open(file, 'ax', mode);
  return {
    write: async (bytes) => (await handle.write(bytes)).bytesWritten,
    truncate: (length) => handle.truncate(length),
    sync: () => handle.datasync(),
    close: () => handle.close(),
  };
}
