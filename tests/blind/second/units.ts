/** How many draws a cell of each part has. */
import type { BlindOptions } from '../options.ts';
import type { Part } from './demands.ts';

/**
 * Every run beside the tests: sound sticks of every gate, every slip, every fault at 2 to 4 times its size and those without degrees, pairs,
 * on each kind of pad. Cells this small miss only what fails badly: 2 of 5, 3 of 4 slips; all cells of a part together tell the rest
 * (together.ts). None at 1.5 times, which wants more draws.
 */
const CI_UNITS: Readonly<Record<Part, number>> = { sound: 12, slip: 4, whole: 5, far: 5, near: 0, pair: 20 };
/** With 100 draws 98 % is missed at 94, 80 % at 71. */
const ALL_UNITS = 100;

export function unitsOf({ units, all }: BlindOptions, part: Part): number {
  return units ?? (all ? ALL_UNITS : CI_UNITS[part]);
}
