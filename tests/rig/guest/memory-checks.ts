/** A whole memory session through a real node, while the pad streams its sticks: read twice, planned, written, read again. */
import { isDeepStrictEqual } from 'node:util';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import { bundledProtocols, isProtocolFor } from '../../../core/image/bundled-protocols.ts';
import { decodeLayers } from '../../../core/image/decode-layers.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { writeMemory } from '../../../core/image/write-memory.ts';
import { demos } from '../../../core/simulate/demos.ts';
import { memoryImage } from '../../../core/simulate/memory-image.ts';
import { wanted } from '../../support/fault-pad.ts';
import { check, figure } from './checks.ts';
import { MemoryBench } from './memory-bench.ts';
import { checkFaults } from './memory-faults.ts';
import { planJob, readAll, valueOf } from './memory-job.ts';
import type { RigPad } from './rig-pad.ts';

/** The sticks go on while the memory is read and written. */
const STREAM = { hz: 125, count: 250 };

export async function checkMemory(pad: RigPad): Promise<void> {
  const bench = new MemoryBench(pad);
  const { identity } = await bench.plug();
  const protocol = bundledProtocols.find((one) => isProtocolFor(one, identity));
  check(
    'a pad with a memory is known by its protocol, which may read and write over its connection',
    protocol?.reads.includes(identity.transport) === true && protocol.writes.includes(identity.transport),
    { protocol: protocol?.id, transport: identity.transport },
  );
  if (protocol === undefined) return;
  await checkSession(pad, bench, protocol);
  const ends = await checkFaults(bench);
  figure('memory', { sessions: bench.sessions, ...ends });
  await pad.unplug();
}

async function checkSession(pad: RigPad, bench: MemoryBench, protocol: MemoryProtocol): Promise<void> {
  const map = bundledMaps.find(({ id }) => id === 'bench-pad-words');
  if (map === undefined) throw new Error('The map of the memory of words is not bundled.');
  const image = memoryImage('words', { factory: demos.healthy.build.firmware, user: null }, 1);
  await bench.setMemory(image, null);

  await pad.order({ op: 'stream', ...STREAM });
  const read = await readAll(bench, protocol, map);
  const told = valueOf(read.value);
  check(
    'the whole memory is read twice alike, as it stands in the pad, and kept, while the sticks stream',
    isDeepStrictEqual(told.image, image) && isDeepStrictEqual(read.kept, [image]) && read.others > 0,
    { bytes: told.image.length, commands: read.tally.done, retries: read.tally.retries, streamed: read.others },
  );

  const job = await planJob(told, 'factory', protocol);
  const written = await bench.play(protocol, (exchange) => writeMemory(exchange, job));
  const steps = written.journal.map(({ step }) => step);
  const { end, problem } = written.value;
  check(
    'a plan is written block by block, read back and compared, and ends in after, each step journalled',
    end === 'after' && problem === null && isDeepStrictEqual(steps, ['begin', ...job.blocks.map(() => 'write'), 'end']),
    { end, problem, steps, commands: written.tally.done, retries: written.tally.retries },
  );
  check('the pad then holds the planned image, byte for byte', isDeepStrictEqual(await bench.look(), job.after), {
    changed: job.after.filter((byte, at) => byte !== job.before[at]).length,
  });
  await pad.event('streamed');

  const again = valueOf((await readAll(bench, protocol, map)).value);
  const [layer] = decodeLayers(again.image, map);
  const stored = Object.fromEntries((layer?.sticks ?? []).map(({ stick, mapping }) => [stick, mapping]));
  check(
    'read once more the memory holds the planned numbers behind a good checksum',
    layer?.checksum?.good === true && isDeepStrictEqual(stored, wanted),
    { stored },
  );
  figure('memory session', {
    bytes: map.size,
    commands: read.tally.done + written.tally.done,
    millisACommand: Math.round((100 * (read.millis + written.millis)) / (read.tally.done + written.tally.done)) / 100,
  });
}
