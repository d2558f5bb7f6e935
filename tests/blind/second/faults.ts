/** Every fault of the second hand, by name. */
import type { Fault } from './fault.ts';
import { padFaults } from './pad-faults.ts';
import { returnFaults } from './return-faults.ts';
import { shapeFaults } from './shape-faults.ts';
import { signalFaults } from './signal-faults.ts';

const all = { ...shapeFaults, ...signalFaults, ...returnFaults, ...padFaults };
export type FaultName = keyof typeof all;
export const faults: Readonly<Record<FaultName, Fault>> = all;
export const faultNames = Object.keys(all) as readonly FaultName[];
