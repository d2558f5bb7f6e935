/** The few things that writing a file whole asks of the file system, so that a test can make each of them fail. */
import fs from 'node:fs';
import promises from 'node:fs/promises';

/** At once or later: the same steps serve who may wait and who may not. */
export type Soon<T> = T | Promise<T>;

export interface NewFile {
  /** Bytes taken, which may be fewer than given. */
  write(bytes: Uint8Array): Soon<number>;
  chmod(mode: number): Soon<void>;
  /** Down to the disk itself. */
  sync(): Soon<void>;
  close(): Soon<void>;
}

export interface Disk {
  /** Makes a new file; one that is there already is refused with EEXIST. The umask takes rights away from `mode`. */
  create(file: string, mode: number): Soon<NewFile>;
  /** What stands in the file, or at the end of the links that lead to it; ENOENT where there is none. */
  find(file: string): Soon<{ readonly path: string; readonly mode: number }>;
  read(file: string): Soon<Uint8Array>;
  rename(from: string, to: string): Soon<void>;
  /** A second name for the same file; a name that is taken is refused with EEXIST. */
  link(from: string, to: string): Soon<void>;
  remove(file: string): Soon<void>;
  syncFolder(folder: string): Soon<void>;
}

export const systemDisk: Disk = {
  async create(file, mode) {
    const handle = await promises.open(file, 'wx', mode);
    return {
      write: async (bytes) => (await handle.write(bytes)).bytesWritten,
      chmod: (to) => handle.chmod(to),
      sync: () => handle.sync(),
      close: () => handle.close(),
    };
  },
  async find(file) {
    const path = await promises.realpath(file);
    return { path, mode: (await promises.stat(path)).mode };
  },
  read: (file) => promises.readFile(file),
  rename: (from, to) => promises.rename(from, to),
  link: (from, to) => promises.link(from, to),
  remove: (file) => promises.unlink(file),
  async syncFolder(folder) {
    const handle = await promises.open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
};

/** For who cannot wait: everything is done when a call returns. */
export const waitingDisk: Disk = {
  create(file, mode) {
    const opened = fs.openSync(file, 'wx', mode);
    return {
      write: (bytes) => fs.writeSync(opened, bytes),
      chmod: (to) => fs.fchmodSync(opened, to),
      sync: () => fs.fsyncSync(opened),
      close: () => fs.closeSync(opened),
    };
  },
  find(file) {
    const path = fs.realpathSync(file);
    return { path, mode: fs.statSync(path).mode };
  },
  read: (file) => fs.readFileSync(file),
  rename: (from, to) => fs.renameSync(from, to),
  link: (from, to) => fs.linkSync(from, to),
  remove: (file) => fs.unlinkSync(file),
  syncFolder(folder) {
    const opened = fs.openSync(folder, 'r');
    try {
      fs.fsyncSync(opened);
    } finally {
      fs.closeSync(opened);
    }
  },
};
