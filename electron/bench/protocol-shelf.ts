/** The memory protocols: that of the simulated pads, and the technician's own as files in the data folder. */
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import { bundledProtocols, findProtocol } from '../../core/image/bundled-protocols.ts';
import type { MemoryProtocol } from '../../core/image/memory-protocol.ts';
import { parseMemoryProtocol } from '../../core/image/parse-memory-protocol.ts';
import type { PadIdentity } from '../../core/pad/identity.ts';
import { failed, done, type Result } from '../../core/result.ts';
import { readJson } from '../store/atomic-file.ts';

export class ProtocolShelf {
  readonly #folder: string;
  readonly #now: () => Date;

  constructor(folder: string, now: () => Date) {
    this.#folder = folder;
    this.#now = now;
  }

  /** Own files come before the program's. A file that is no protocol is named, for a pad may be waiting for it. */
  async find(pad: PadIdentity): Promise<Result<MemoryProtocol>> {
    const names = (await readdir(this.#folder).catch(() => [])).filter((name) => name.endsWith('.json'));
    const own: MemoryProtocol[] = [];
    let refusal: Result<never> | null = null;
    for (const name of names.toSorted()) {
      const read = await readJson(path.join(this.#folder, name), z.unknown(), this.#now());
      const parsed = read.kind === 'read' ? parseMemoryProtocol(read.value) : null;
      if (parsed?.ok === true) own.push(parsed.value);
      else if (parsed !== null) refusal = failed('memory-protocol', `${name}: ${parsed.problem.says}`);
    }
    const found = findProtocol([...own, ...bundledProtocols], pad);
    if (found !== null) return done(found);
    return (
      refusal ??
      failed(
        'memory-none',
        'The program knows no memory protocol for this pad; work on image files, or put a protocol file into the folder protocols.',
      )
    );
  }
}
