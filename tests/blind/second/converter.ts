/** From a sensor's share of the half travel to the counts of the pad's converter, and back to what noise is added to. */
import type { AxisLaw, Part } from './part.ts';
import type { PadPlan } from './pad-plan.ts';
import type { Vec } from './plane.ts';

/** Volts in shares of the converter's range. Up brings the voltage down, as HID counts y. */
export function voltsOf(part: Part, sensed: Vec): Vec {
  return { x: volts(part.x, sensed.x), y: volts(part.y, -sensed.y) };
}

function volts({ span }: AxisLaw, share: number): number {
  return 0.5 + (span * share) / 2;
}

type Converter = Pick<PadPlan, 'domain' | 'converterBits' | 'inverted' | 'swapped'>;

/** Counts not yet rounded; those of a coarse converter stand in the upper bits of a sensor pad's 12-bit field. */
export function countsOf(plan: Converter, { x, y }: Vec): Vec {
  const codes = 2 ** plan.converterBits;
  const counts = { x: x * codes - 0.5, y: y * codes - 0.5 };
  return plan.domain === 'reported' ? counts : wired(plan, counts, codes - 1);
}

/** What a converter gives for them. */
export function rounded(plan: Converter, counts: Vec): Vec {
  const greatest = 2 ** plan.converterBits - 1;
  const scale = plan.domain === 'sensor' ? 2 ** (12 - plan.converterBits) : 1;
  const code = (count: number): number => Math.min(greatest, Math.max(0, Math.round(count))) * scale;
  return { x: code(counts.x), y: code(counts.y) };
}

/** Axes that are swapped or count the other way; `ends` is the sum of the least and the greatest count. */
export function wired({ inverted, swapped }: Pick<PadPlan, 'inverted' | 'swapped'>, counts: Vec, ends: number): Vec {
  const { x, y } = swapped ? { x: counts.y, y: counts.x } : counts;
  return { x: inverted.x ? ends - x : x, y: inverted.y ? ends - y : y };
}
