/** Plugs simulated pads in by the name of what is wrong with them. */
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import { decodeLayers } from '../../core/image/decode-layers.ts';
import { validLayers } from '../../core/image/valid-layers.ts';
import type { StoredLayers } from '../../core/simulate/build.ts';
import { demos, findDemo, type DemoName } from '../../core/simulate/demos.ts';
import { memoryImage, type MemoryKind } from '../../core/simulate/memory-image.ts';
import { SimulatedMemory } from '../../core/simulate/simulated-memory.ts';
import { createSimulatedPad } from '../../core/simulate/simulated-pad.ts';
import { done } from '../../core/result.ts';
import type { Clock } from '../bench/time/clock.ts';
import type { PadSource, PlugDemo } from '../bench/pads/pad-source.ts';
import { SimulatedTransport } from './simulated-transport.ts';

/** Each further pad gets a seed of its own, counted up from the first: the same calls give the same pads. */
export function createDemoPlug(clock: Clock, firstSeed: number): PlugDemo {
  let plugged = 0;
  return (name, key) => {
    const demo = findDemo(name);
    if (!demo.ok) return demo;
    const seed = firstSeed + plugged;
    const pad = createSimulatedPad(demo.value, seed);
    plugged += 1;
    const memory = memoryFor(demo.value, pad.layers.layers, seed);
    const transport = new SimulatedTransport(key, pad, clock, memory);
    const stored = storedIn(demo.value, memory);
    return done({ transport, problem: null, rule: null, hand: transport.hand, cable: transport, ...stored });
  };
}

/** Two of the pads have an older board with the small memory. */
const OLDER_BOARDS: ReadonlySet<DemoName> = new Set(['worn', 'loose']);

/** Pads of the plain family give no access to their memory: null. */
export function memoryKindOf(demo: DemoName): MemoryKind | null {
  if (demos[demo].build.family !== 'sensor') return null;
  return OLDER_BOARDS.has(demo) ? 'words' : 'packed';
}

/** Null where what the pad reports has gone through its mapping already: that is not its to be looked at under again. */
function memoryFor(demo: DemoName, layers: StoredLayers, seed: number): SimulatedMemory | null {
  const kind = memoryKindOf(demo);
  return kind === null ? null : new SimulatedMemory({ kind, image: memoryImage(kind, layers, seed), seed });
}

/** What its layers hold: looked up in the memory itself, so that what was written meanwhile counts. */
export function storedIn(demo: DemoName, memory: SimulatedMemory | null): Pick<PadSource, 'stored'> {
  const map = bundledMaps.find(({ id }) => id === `bench-pad-${memoryKindOf(demo) ?? ''}`);
  if (memory === null || map === undefined) return {};
  return { stored: () => validLayers(decodeLayers(memory.image, map)) };
}
