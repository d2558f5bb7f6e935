/** The plain radial zone on the pad's own deflection that would hide a rest, and what it costs. */
import type { ZoneAnswer, ZoneCost } from './chain.ts';

/**
 * `observed` is the largest limited |d| of the settled readings, `tolerance99` the tolerance radius: zones of these sizes
 * hide what was seen, and 99 % of releases. The cost of a zone d at a rest offset r ≤ d is the push that it swallows, from
 * d − r on the side of the offset to d + r on the other.
 */
export function smallestZone(observed: number, tolerance99: number | null, offset: number): ZoneAnswer['smallestZone'] {
  return {
    observed,
    tolerance99,
    costs: {
      observed: costOf(observed, offset),
      tolerance99: tolerance99 === null ? null : costOf(tolerance99, offset),
    },
  };
}

function costOf(zone: number, offset: number): ZoneCost {
  return { least: Math.max(0, zone - offset), largest: zone + offset };
}
