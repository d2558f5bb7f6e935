/** Plugs simulated pads in by the name of what is wrong with them. */
import { demos, findDemo } from '../../core/simulate/demos.ts';
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
    const pad = createSimulatedPad(demo.value, firstSeed + plugged);
    plugged += 1;
    const transport = new SimulatedTransport(key, pad, clock);
    // Counts of the plain family have gone through that mapping already: it is not theirs to be looked at under.
    const { family, firmware } = demos[demo.value].build;
    const stored = family === 'sensor' ? { stored: firmware } : {};
    return done({ transport, problem: null, rule: null, hand: transport.hand, ...stored });
  };
}
