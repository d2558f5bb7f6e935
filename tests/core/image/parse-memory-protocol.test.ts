import { describe, expect, it } from 'vitest';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import { bundledProtocols, isProtocolFor } from '../../../core/image/bundled-protocols.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { parseMemoryProtocol } from '../../../core/image/parse-memory-protocol.ts';

const [bench] = bundledProtocols as [MemoryProtocol];

function says(changed: object): string {
  const read = parseMemoryProtocol({ ...bench, ...changed });
  return read.ok ? 'read' : read.problem.says;
}

describe('a memory-protocol file', () => {
  it.each(bundledProtocols)('is read as it was written: $id', (protocol) => {
    expect(parseMemoryProtocol(JSON.parse(JSON.stringify(protocol)))).toEqual({ ok: true, value: protocol });
  });

  it.each(bundledProtocols)('names maps that come with the program: $id', ({ identify }) => {
    for (const { map } of identify.kinds) expect(bundledMaps.map(({ id }) => id)).toContain(map);
  });

  it('is found by the numbers of a pad, and by no other', () => {
    const pad = { ...bench.pads[0], product: '', serial: null, transport: 'usb' } as const;
    const { vendorId = 0, productId = 0 } = pad;
    expect(isProtocolFor(bench, { ...pad, vendorId, productId })).toBe(true);
    expect(isProtocolFor(bench, { ...pad, vendorId, productId: productId + 1 })).toBe(false);
  });

  it.each([
    ['a place that is missing', { command: { ...bench.command, code: undefined } }, 'command.code is missing'],
    ['a word that is not known', { reads: ['radio'] }, 'reads[0] must be'],
    [
      'a block that its report cannot hold',
      { read: { ...bench.read, block: 64 } },
      "the reply's checksum and data overlap at byte 61",
    ],
    [
      'two places that overlap',
      { command: { ...bench.command, length: { offset: 4, length: 1, endian: 'little' } } },
      "the command's address and length overlap at byte 4",
    ],
    [
      'a length that counts no block',
      { write: { ...bench.write, block: 300 }, command: { ...bench.command, byteLength: 400, checksum: null } },
      'the length has too few bytes for a block',
    ],
    [
      'a battery beyond the reply',
      { battery: { code: 4, offset: 60, least: 20 } },
      "what the pad is to tell of itself ends beyond the reply's data",
    ],
  ])('is refused with its place: %s', (_name, changed, words) => {
    expect(says(changed)).toContain(words);
  });
});
