/** In which order checksums and markers follow the numbers. */
import { done, failed, type Result } from '../result.ts';
import { overlap, regionsOf, type Region } from './map-regions.ts';
import type { MemoryMap } from './memory-map.ts';

/**
 * A checksum comes after every checksum and marker that it covers, whichever layer they are of. A marker comes after its own
 * layer's checksum, so that it says last that all is there; where that checksum covers it, directly or by others, the marker
 * comes first: until the checksum fits, the layer is not valid. Refused: checksums that cover each other in a circle.
 */
export function settleOrder(map: Pick<MemoryMap, 'layers'>): Result<Region[]> {
  const regions = regionsOf(map).filter(({ role }) => role !== 'stick');
  const earlier = new Map(regions.map((region) => [region, coveredBy(region, map, regions)]));
  const waitsFor = (one: Region, other: Region): boolean =>
    (earlier.get(one) ?? []).some((each) => each === other || waitsFor(each, other));
  const circle = circleIn(earlier);
  if (circle !== null)
    return failed(
      'memory-map',
      `The memory map cannot be used: the ${circle.name} covers itself by way of others; correct the map.`,
    );
  for (const marker of regions.filter(({ role }) => role === 'marker')) {
    const own = regions.find(({ role, layer }) => role === 'checksum' && layer === marker.layer);
    if (own !== undefined && !waitsFor(own, marker)) earlier.get(marker)?.push(own);
  }
  const order: Region[] = [];
  const place = (region: Region): void => {
    if (order.includes(region)) return;
    for (const each of earlier.get(region) ?? []) place(each);
    order.push(region);
  };
  for (const region of regions) place(region);
  return done(order);
}

function coveredBy(region: Region, map: Pick<MemoryMap, 'layers'>, regions: readonly Region[]): Region[] {
  const covers = region.role === 'checksum' ? map.layers[region.layer]?.checksum?.covers : undefined;
  return covers === undefined ? [] : regions.filter((one) => overlap(one, covers));
}

/** A region that waits for itself; null where none does. */
function circleIn(earlier: ReadonlyMap<Region, readonly Region[]>): Region | null {
  const isIn = (region: Region, way: readonly Region[]): boolean =>
    way.includes(region) || (earlier.get(region) ?? []).some((each) => isIn(each, [...way, region]));
  return [...earlier.keys()].find((region) => isIn(region, [])) ?? null;
}
