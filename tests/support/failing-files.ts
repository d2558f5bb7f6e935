/** Real files of which one operation fails, as told by an explicit fault. */
import { systemFiles, type LogFile, type LogFiles } from '../../electron/store/log-files.ts';

export interface FileFault {
  readonly at: 'create' | 'write' | 'truncate' | 'sync' | 'close';
  /** The system's own name of the error, e.g. ENOSPC. */
  readonly errno: string;
  /** Calls of that operation that still succeed. */
  readonly after?: number;
  /** Bytes that the failing write takes before the next one fails: a disk that fills up amid a line. */
  readonly takes?: number;
}

/** An error as the file system throws it. */
export function systemError(errno: string): Error {
  return Object.assign(new Error(`${errno}: made to fail`), { code: errno });
}

export interface FailingFiles extends LogFiles {
  /** Every operation that was asked for, in order. */
  readonly asked: string[];
}

export function failingFiles(...faults: readonly FileFault[]): FailingFiles {
  const asked: string[] = [];
  function check(operation: FileFault['at']): FileFault | null {
    asked.push(operation);
    const times = asked.filter((name) => name === operation).length;
    const fault = faults.find((one) => one.at === operation && times > (one.after ?? 0));
    if (fault === undefined) return null;
    if (fault.takes === undefined || times > (fault.after ?? 0) + 1) throw systemError(fault.errno);
    return fault;
  }
  return {
    asked,
    remove: (file) => systemFiles.remove(file),
    async create(file) {
      check('create');
      const real = await systemFiles.create(file);
      return {
        async write(bytes) {
          const fault = check('write');
          return real.write(fault?.takes === undefined ? bytes : bytes.subarray(0, fault.takes));
        },
        async truncate(length) {
          check('truncate');
          await real.truncate(length);
        },
        async sync() {
          check('sync');
          await real.sync();
        },
        async close() {
          await real.close();
          check('close');
        },
      } satisfies LogFile;
    },
  };
}
