/** What differs between two images, in runs of bytes, with its meaning where a map names it. */
import { toHex } from '../hid/hex.ts';
import { STICKS } from '../pad/stick.ts';
import { overlap, regionsOf } from './map-regions.ts';
import { LAYERS, type MemoryMap } from './memory-map.ts';
import { changesOfStick } from './stored-values.ts';

export interface DifferingRun {
  readonly offset: number;
  readonly old: string;
  readonly new: string;
  /** What the bytes mean by the map; null where it does not name them, or there is no map. */
  readonly means: string | null;
  /** The map says that these bytes change by themselves. */
  readonly volatile: boolean;
}

export interface ImageComparison {
  readonly sameSize: boolean;
  /** Over the bytes that both have. */
  readonly runs: readonly DifferingRun[];
}

/** Runs that touch are one; a map is used where both images have its size. */
export function compareImages(before: Uint8Array, after: Uint8Array, map: MemoryMap | null): ImageComparison {
  const common = Math.min(before.length, after.length);
  const fits = map !== null && before.length === map.size && after.length === map.size;
  const named = fits ? namedChanges(before, after, map) : [];
  const runs: DifferingRun[] = [];
  for (let at = 0; at < common; at += 1) {
    if (before[at] === after[at]) continue;
    let end = at + 1;
    while (end < common && before[end] !== after[end]) end += 1;
    const range = { offset: at, length: end - at };
    const means = named.filter((one) => overlap(one, range)).map((one) => one.means);
    runs.push({
      offset: at,
      old: toHex(before.subarray(at, end)),
      new: toHex(after.subarray(at, end)),
      means: means.length === 0 ? null : means.join('; '),
      volatile: fits && map.volatile.some((one) => overlap(one, range)),
    });
    at = end;
  }
  return { sameSize: before.length === after.length, runs };
}

function namedChanges(before: Uint8Array, after: Uint8Array, map: MemoryMap) {
  const sticks = LAYERS.flatMap((layer) =>
    STICKS.flatMap((stick) => {
      const place = map.layers[layer]?.sticks[stick];
      if (place === undefined) return [];
      const changes = changesOfStick(place.codec, place.offset, before, after, `${layer} ${stick}`);
      return changes.map(({ offset, old, means }) => ({ offset, length: old.length / 2, means }));
    }),
  );
  const others = regionsOf(map).filter(({ role }) => role !== 'stick');
  return [...sticks, ...others.map(({ offset, length, name }) => ({ offset, length, means: name }))];
}
