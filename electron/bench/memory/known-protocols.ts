/** The memory protocols: that of the simulated pads, and the technician's own as files in the data folder. */
import { bundledProtocols, isProtocolFor } from '../../../core/image/bundled-protocols.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { parseMemoryProtocol } from '../../../core/image/parse-memory-protocol.ts';
import type { PadIdentity } from '../../../core/pad/identity.ts';
import { failed, done, type Problem, type Result } from '../../../core/result.ts';
import { readJsonFolder, sayFault } from '../../store/json-folder.ts';

export class KnownProtocols {
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
  }

  /**
   * An own protocol comes before the program's. Refused: a pad that two own protocols are for, and one that a file at fault is
   * for or, where that cannot be told, may be for: another protocol in its place would write otherwise than the technician means.
   */
  async find(pad: PadIdentity): Promise<Result<MemoryProtocol>> {
    const own: { readonly name: string; readonly protocol: MemoryProtocol }[] = [];
    let fault: Problem | null = null;
    for (const { name, read } of await readJsonFolder(this.#folder)) {
      const parsed = read.ok ? parseMemoryProtocol(read.value) : read;
      if (!parsed.ok) {
        if (!read.ok || mayBeFor(read.value, pad))
          fault ??= failed('memory-protocol', sayFault('Protocol file', name, parsed.problem.says)).problem;
      } else if (isProtocolFor(parsed.value, pad)) own.push({ name, protocol: parsed.value });
    }
    if (fault !== null) return { ok: false, problem: fault };
    if (own.length > 1)
      return failed(
        'memory-protocol-two',
        `The protocol files ${own.map(({ name }) => name).join(' and ')} are all for this pad; remove all but one, or rename them so that they no longer end in .json.`,
      );
    const found = own[0]?.protocol ?? bundledProtocols.find((one) => isProtocolFor(one, pad));
    if (found !== undefined) return done(found);
    return failed(
      'memory-none',
      'The program knows no memory protocol for this pad; work on image files, or put a protocol file into the folder protocols.',
    );
  }
}

/** Unless every pad that it names is another. */
function mayBeFor(value: unknown, { vendorId, productId }: PadIdentity): boolean {
  const pads = typeof value === 'object' && value !== null && 'pads' in value ? value.pads : null;
  if (!Array.isArray(pads) || pads.length === 0) return true;
  return !pads.every((pad: unknown) => {
    if (typeof pad !== 'object' || pad === null || !('vendorId' in pad) || !('productId' in pad)) return false;
    const isNumbered = typeof pad.vendorId === 'number' && typeof pad.productId === 'number';
    return isNumbered && (pad.vendorId !== vendorId || pad.productId !== productId);
  });
}
