/** The maps of the program's own simulated pads; maps of real pads are for the technician to make, share and prove. */
import type { MemoryMap } from './memory-map.ts';
import type { SpanField, StickCodec } from './stick-codec.ts';

const hosts: MemoryMap['hosts'] = [
  { name: 'a host that knows both layers', reads: ['user', 'factory'] },
  { name: 'a host that reads the factory layer alone', reads: ['factory'] },
];

function packed(...order: [SpanField, SpanField, SpanField]): StickCodec {
  return { form: 'packed12', order };
}

/** Left stick stored from the top down, right stick from the centre on. */
const leftCodec = packed('above', 'centre', 'below');
const rightCodec = packed('centre', 'below', 'above');
const wordCodec: StickCodec = { form: 'words', bits: 16, endian: 'little', values: 'minCentreMax' };

const packedMap: MemoryMap = {
  kind: 'stickwright-memory-map',
  version: 1,
  id: 'bench-pad-packed',
  name: 'Bench pad with sensor counts: packed pairs of 12 bits, user layer with markers',
  proof: 'proven',
  size: 64 * 1024,
  fingerprint: [{ offset: 0x0000, bytes: '53570a01' }],
  layers: {
    factory: {
      marker: null,
      checksum: null,
      sticks: { left: { offset: 0x2140, codec: leftCodec }, right: { offset: 0x2149, codec: rightCodec } },
    },
    user: {
      marker: { offset: 0x4300, valid: '5ac3', empty: 'ffff' },
      checksum: null,
      sticks: { left: { offset: 0x4302, codec: leftCodec }, right: { offset: 0x4310, codec: rightCodec } },
    },
  },
  hosts,
  volatile: [{ offset: 0xf000, length: 0x100 }],
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
