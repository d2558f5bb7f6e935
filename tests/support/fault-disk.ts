/**
 * The real disk, on which journal lines and vault entries stop arriving from one of them on: put in the place of
 * `node:fs/promises` by whoever tests with it.
 */
import type * as promises from 'node:fs/promises';

/**
 * `full` takes half of the line and refuses the rest, once or always; `killed` ends the program before the line, in the middle
 * of it or after it: nothing that is asked of the disk then is ever answered.
 */
export type DiskFault = 'full' | 'full always' | 'killed before' | 'killed within' | 'killed after';

type Files = typeof promises;

class FaultDisk {
  /** Lines that were asked for since the fault was set. */
  lines = 0;
  #fault: { readonly kind: DiskFault; readonly line: number } | null = null;
  #isDead = false;
  #waiting: ((thrown: Error) => void)[] = [];

  /** Lines are counted from here. */
  arm(fault: { readonly kind: DiskFault; readonly line: number } | null): void {
    this.lines = 0;
    this.#fault = fault;
    this.#isDead = false;
  }

  /** The program was killed at its line. */
  get isDead(): boolean {
    return this.#isDead;
  }

  /** What a dead program still waits for is refused, so that its remains can be cleared away. */
  bury(): void {
    for (const refuse of this.#waiting.splice(0)) refuse(full());
    this.arm(null);
  }

  /** The functions of the real module, with lines counted. */
  over(real: Files): Files {
    return {
      ...real,
      open: (async (file: string, flags: string, mode?: number) => {
        const handle = await real.open(file, flags, mode);
        const write = handle.writeFile.bind(handle);
        handle.writeFile = ((data: string) => this.#line(data, (part) => write(part))) as typeof handle.writeFile;
        return handle;
      }) as Files['open'],
    };
  }

  async #line(data: string, write: (data: string) => Promise<void>): Promise<void> {
    if (this.#isDead) return this.#silence();
    const at = this.lines;
    this.lines += 1;
    const fault = this.#fault;
    const isNow = fault !== null && (at === fault.line || (fault.kind === 'full always' && at > fault.line));
    if (!isNow) return write(data);
    if (fault.kind !== 'killed before')
      await write(fault.kind === 'killed after' ? data : data.slice(0, data.length / 2));
    if (fault.kind.startsWith('full')) throw full();
    this.#isDead = true;
    return this.#silence();
  }

  #silence(): Promise<void> {
    return new Promise((_, refuse) => this.#waiting.push(refuse));
  }
}

/** Made here, for whatever this file imports may itself ask for the module that it stands for. */
function full(): Error {
  return Object.assign(new Error('ENOSPC: made to fail'), { code: 'ENOSPC' });
}

export const faultDisk = new FaultDisk();
