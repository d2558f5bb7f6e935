/** The maps of the program's own simulated pads; maps of real pads are for the technician to make, share and prove. */
import type { MemoryMap } from './memory-map.ts';
import type { StickCodec } from './stick-codec.ts';

const hosts: MemoryMap['hosts'] = [
  { name: 'a host that knows both layers', reads: ['user', 'factory'] },
  { name: 'a host that reads the factory layer alone', reads: ['factory'] },
];

const packedCodec: StickCodec = { form: 'packed12', order: ['below', 'above', 'centre'] };
const wordCodec: StickCodec = { form: 'words', bits: 16, endian: 'little', values: 'minCentreMax' };

const packedMap: MemoryMap = {
  kind: 'stickwright-memory-map',
  version: 1,
  id: 'bench-pad-packed',
  name: 'Bench pad with sensor counts: packed pairs of 12 bits, a user layer with a marker and a checksum',
  proof: 'proven',
  size: 48 * 1024,
  fingerprint: [{ offset: 0x0000, bytes: '53570c01' }],
  layers: {
    factory: {
      marker: null,
      checksum: null,
      sticks: { left: { offset: 0x2c10, codec: packedCodec }, right: { offset: 0x2c30, codec: packedCodec } },
    },
    user: {
      marker: { offset: 0x7640, valid: '6b1ed427', empty: 'ffffffff' },
      checksum: { kind: 'crc16xmodem', offset: 0x7648, endian: 'big', covers: { offset: 0x7620, length: 36 } },
      sticks: { left: { offset: 0x7630, codec: packedCodec }, right: { offset: 0x7620, codec: packedCodec } },
    },
  },
  hosts,
  volatile: [{ offset: 0xb000, length: 0x100 }],
  plausible: { bits: 12, leastSpan: 200 },
};

const wordMap: MemoryMap = {
  kind: 'stickwright-memory-map',
  version: 1,
  id: 'bench-pad-words',
  name: 'Bench pad with words: 16-bit minimum, centre, maximum with a checksum',
  proof: 'proven',
  size: 4096,
  fingerprint: [{ offset: 0x0000, bytes: '53570b01' }],
  layers: {
    factory: {
      marker: null,
      checksum: { kind: 'crc16ccitt', offset: 0x0118, endian: 'little', covers: { offset: 0x0100, length: 24 } },
      sticks: { left: { offset: 0x0100, codec: wordCodec }, right: { offset: 0x010c, codec: wordCodec } },
    },
  },
  hosts: [{ name: 'any host', reads: ['factory'] }],
  volatile: [],
  plausible: { bits: 12, leastSpan: 200 },
};

export const bundledMaps: readonly MemoryMap[] = [packedMap, wordMap];
