/** The few things a recorder asks of the file system, so that a test can make each of them fail. */
import { open } from 'node:fs/promises';

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
}

export const systemFiles: LogFiles = {
  async create(file) {
    const handle = await open(file, 'ax');
    return {
      write: async (bytes) => (await handle.write(bytes)).bytesWritten,
      truncate: (length) => handle.truncate(length),
      sync: () => handle.datasync(),
      close: () => handle.close(),
    };
  },
};
