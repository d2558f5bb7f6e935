/** Simulated pads whose memory stands in a file: as a real pad's it holds what was written, however the program ended. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { PadIdentity } from '../../core/pad/identity.ts';
import { done, failed, type Result } from '../../core/result.ts';
import { demoNames, demos, findDemo, type DemoName } from '../../core/simulate/demos.ts';
import { memoryImage, type MemoryKind } from '../../core/simulate/memory-image.ts';
import { SimulatedMemory } from '../../core/simulate/simulated-memory.ts';
import { SimulatedPad } from '../../core/simulate/simulated-pad.ts';
import type { Clock } from '../bench/time/clock.ts';
import type { PadSource } from '../bench/pads/pad-source.ts';
import { writeWholeAtOnce } from '../store/atomic-file.ts';
import { makeFolder } from '../store/own-folder.ts';
import { storageProblem } from '../store/storage-problem.ts';
import { memoryKindOf, storedIn } from './plug-demo.ts';
import { SimulatedTransport } from './simulated-transport.ts';

export interface KeptDemo {
  readonly identity: PadIdentity;
  /** Where its memory stands: names the pad in a lock. */
  readonly file: string;
  /** Reads the memory as the last program left it. */
  readonly plug: (clock: Clock) => Promise<Result<PadSource>>;
}

const SEED = 1;

/** The demo of that name; its serial number is its own, for the pads of that name in the app begin anew each time. */
export function keptDemo(name: string, folder: string): Result<KeptDemo> {
  const demo = findDemo(name);
  if (!demo.ok) return demo;
  const pad = new SimulatedPad(demos[demo.value].build, SEED, serialOf(demo.value));
  const file = path.join(folder, `${demo.value}.bin`);
  return done({ identity: pad.identity, file, plug: (clock) => plug(demo.value, pad, file, clock) });
}

/** The name of the demo that this identity is of; null for any other pad. */
export function keptDemoName({ serial, transport }: PadIdentity): DemoName | null {
  return (transport === 'simulated' && demoNames.find((name) => serialOf(name) === serial)) || null;
}

function serialOf(name: DemoName): string {
  return `${name}-kept`;
}

async function plug(name: DemoName, pad: SimulatedPad, file: string, clock: Clock): Promise<Result<PadSource>> {
  const kind = memoryKindOf(name);
  const image = kind === null ? done(null) : await readMemory(kind, pad, file);
  if (!image.ok) return image;
  const saved = (bytes: Uint8Array): void => {
    // A pad that cannot hold what it is told has failed.
    if (!writeWholeAtOnce(file, bytes).ok) transport.unplug();
  };
  const memory =
    kind === null || image.value === null ? null : new SimulatedMemory({ kind, image: image.value, seed: SEED, saved });
  const transport: SimulatedTransport = new SimulatedTransport('demo', pad, clock, memory);
  return done({ transport, problem: null, rule: null, hand: transport.hand, ...storedIn(name, memory) });
}

async function readMemory(kind: MemoryKind, pad: SimulatedPad, file: string): Promise<Result<Uint8Array>> {
  const maker = memoryImage(kind, pad.layers.layers, SEED);
  try {
    await makeFolder(path.dirname(file));
    const bytes = await readFile(file);
    if (bytes.length === maker.length) return done(Uint8Array.from(bytes));
  } catch (thrown) {
    const problem = storageProblem(thrown, 'read', file);
    return problem.code === 'file-missing' ? done(maker) : { ok: false, problem };
  }
  return failed(
    'demo-memory',
    `The memory of this simulated pad in ${file} is not whole; remove the file, and the pad is as the maker left it.`,
  );
}
