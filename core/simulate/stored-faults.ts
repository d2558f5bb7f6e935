/** Faults of what a pad stores: numbers that do not fit the stick. */
import type { StickId } from '../pad/stick.ts';
import type { FirmwareMapping, PadBuild, StoredLayers } from './build.ts';
import type { FaultSpot } from './fault-spot.ts';

/**
 * `stale-mapping`: the layer in use is off, and so is what the firmware makes of the counts. `layers-disagree`: the user layer
 * fits, the factory's is off. Off by a share of the half travel: all numbers of both axes along the spot's angle where the
 * spot lies in the middle of an axis, else one edge, outward or inward.
 */
export function moveStored(
  build: PadBuild,
  fault: 'stale-mapping' | 'layers-disagree',
  share: number,
  spot: FaultSpot,
): PadBuild {
  const sound = build.layers?.factory ?? build.firmware;
  const off: Record<StickId, FirmwareMapping> = { ...sound, [spot.stick]: moved(sound[spot.stick], share, spot) };
  const layers: StoredLayers = fault === 'stale-mapping' ? { user: null, factory: off } : { user: sound, factory: off };
  return { ...build, layers, firmware: layers.user === null ? off : sound };
}

function moved(mapping: FirmwareMapping, share: number, spot: FaultSpot): FirmwareMapping {
  if (Math.abs(spot.at) < 0.3) {
    const angle = (spot.angle * Math.PI) / 180;
    return { x: shiftAll(mapping.x, share * Math.cos(angle)), y: shiftAll(mapping.y, share * Math.sin(angle)) };
  }
  const axis = mapping[spot.axis];
  const by = Math.round(Math.sign(spot.at) * share * halfOf(axis));
  const edge = spot.side > 0 ? { ...axis, max: axis.max + by } : { ...axis, min: axis.min - by };
  return { ...mapping, [spot.axis]: edge };
}

function shiftAll(axis: FirmwareMapping['x'], share: number): FirmwareMapping['x'] {
  const by = Math.round(share * halfOf(axis));
  return { min: axis.min + by, centre: axis.centre + by, max: axis.max + by };
}

function halfOf(axis: FirmwareMapping['x']): number {
  return (axis.max - axis.min) / 2;
}
