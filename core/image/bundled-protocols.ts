/** The memory protocol of the program's own simulated pads; those of real pads are for the technician to make and share. */
import { demoPads } from '../pad/demo-profile.ts';
import type { PadIdentity } from '../pad/identity.ts';
import type { MemoryProtocol } from './memory-protocol.ts';

const benchProtocol: MemoryProtocol = {
  kind: 'stickwright-memory-protocol',
  version: 1,
  id: 'bench-pad-memory',
  name: 'Bench pad with sensor counts: memory over reports 16 and 17',
  pads: [demoPads.sensor],
  reads: ['simulated', 'usb', 'bluetooth'],
  writes: ['simulated', 'usb'],
  command: {
    reportId: 16,
    byteLength: 63,
    code: 0,
    sequence: 1,
    address: { offset: 2, length: 3, endian: 'little' },
    length: { offset: 5, length: 1, endian: 'little' },
    data: 6,
    checksum: { kind: 'crc16ccitt', offset: 61, endian: 'little', covers: { offset: 0, length: 61 } },
  },
  reply: {
    reportId: 17,
    byteLength: 63,
    holds: [],
    code: { offset: 0, plus: 128 },
    sequence: 1,
    address: { offset: 3, length: 3, endian: 'little' },
    length: { offset: 6, length: 1, endian: 'little' },
    status: { offset: 2, good: [0], again: [1, 2] },
    data: 7,
    checksum: { kind: 'crc16ccitt', offset: 61, endian: 'little', covers: { offset: 0, length: 61 } },
  },
  identify: {
    code: 1,
    kinds: [
      { offset: 0, bytes: '53570c', map: 'bench-pad-packed' },
      { offset: 0, bytes: '53570b', map: 'bench-pad-words' },
    ],
    unit: { offset: 4, length: 8 },
  },
  read: { code: 2, block: 48 },
  write: { code: 3, block: 32, page: 256 },
  battery: { code: 4, offset: 0, least: 20 },
  spacingMillis: 1,
  timeoutMillis: { read: 100, write: 400 },
  settleMillis: 100,
  retries: 3,
};

export const bundledProtocols: readonly MemoryProtocol[] = [benchProtocol];

/** Whether the protocol was made for pads of these numbers. */
export function isProtocolFor({ pads }: MemoryProtocol, { vendorId, productId }: PadIdentity): boolean {
  return pads.some((pad) => pad.vendorId === vendorId && pad.productId === productId);
}
