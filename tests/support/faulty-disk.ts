/** A real disk of which one step of writing a file whole fails, or which takes or gives back other bytes than it should. */
import type { Disk, NewFile, Soon } from '../../electron/store/disk.ts';
import { systemError } from './failing-files.ts';

export type DiskStep = 'create' | 'write' | 'sync' | 'close' | 'read' | 'rename' | 'link';

/** The step throws the error of that name. */
export function failingDisk(disk: Disk, step: DiskStep, errno: string): Disk {
  const fail = (): never => {
    throw systemError(errno);
  };
  if (step === 'create' || step === 'read' || step === 'rename' || step === 'link') return { ...disk, [step]: fail };
  return withFile(disk, (file) => ({ ...file, [step]: step === 'close' ? () => after(file.close(), fail) : fail }));
}

/** Takes so many bytes in all and says of the rest that it took none: a disk that is full. */
export function fullDisk(disk: Disk, room: number): Disk {
  let left = room;
  return withFile(disk, (file) => ({
    ...file,
    write(bytes) {
      const taken = Math.min(left, bytes.length);
      left -= taken;
      return taken === 0 ? 0 : file.write(bytes.subarray(0, taken));
    },
  }));
}

/** Takes no more than so many bytes at a time. */
export function slowDisk(disk: Disk, atOnce: number): Disk {
  return withFile(disk, (file) => ({ ...file, write: (bytes) => file.write(bytes.subarray(0, atOnce)) }));
}

/** Says that it took everything and keeps the beginning alone. */
export function lyingDisk(disk: Disk, keeps: number): Disk {
  return withFile(disk, (file) => ({
    ...file,
    write: (bytes) => after(file.write(bytes.subarray(0, keeps)), () => bytes.length),
  }));
}

/** Gives back one bit wrong. */
export function rottenDisk(disk: Disk): Disk {
  return {
    ...disk,
    read: (file) => after(disk.read(file), (bytes) => bytes.map((byte, at) => (at === 1 ? byte ^ 1 : byte))),
  };
}

function withFile(disk: Disk, change: (file: NewFile) => NewFile): Disk {
  return { ...disk, create: (file, mode) => after(disk.create(file, mode), change) };
}

function after<T, U>(value: Soon<T>, then: (value: T) => U): Soon<U> {
  return value instanceof Promise ? value.then(then) : then(value);
}
