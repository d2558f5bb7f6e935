/** Plugs simulated pads in by the name of what is wrong with them. */
import type { StoredLayers } from '../../core/simulate/build.ts';
import { demos, findDemo, type DemoName } from '../../core/simulate/demos.ts';
import { memoryImage } from '../../core/simulate/memory-image.ts';
import { SimulatedMemory } from '../../core/simulate/simulated-memory.ts';
import { createSimulatedPad } from '../../core/simulate/simulated-pad.ts';
import { done } from '../../core/result.ts';
import type { Clock } from '../bench/clock.ts';
import type { PlugDemo } from '../bench/pad-source.ts';
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
    // Counts of the plain family have gone through that mapping already: it is not theirs to be looked at under.
    const { family, firmware } = demos[demo.value].build;
    const stored = family === 'sensor' ? { stored: firmware } : {};
    return done({ transport, problem: null, rule: null, hand: transport.hand, ...stored });
  };
}

/** Two of the pads have an older board with the small memory. Pads of the plain family give no access to theirs. */
const OLDER_BOARDS: ReadonlySet<DemoName> = new Set(['worn', 'loose']);

function memoryFor(demo: DemoName, layers: StoredLayers, seed: number): SimulatedMemory | null {
  if (demos[demo].build.family !== 'sensor') return null;
  const kind = OLDER_BOARDS.has(demo) ? 'words' : 'packed';
  return new SimulatedMemory({ kind, image: memoryImage(kind, layers, seed), seed });
}
