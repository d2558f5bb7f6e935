/** What the image commands are given: an image, a memory map by its id or its file. */
import path from 'node:path';
import { checkImage } from '../../../core/image/check-image.ts';
import { checkImageFile } from '../../../core/image/check-image-file.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { readHex } from '../../../core/hid/hex.ts';
import { parseMemoryMap } from '../../../core/image/parse-memory-map.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { MapCatalogue } from '../../bench/memory/map-catalogue.ts';
import { KnownMaps } from '../../bench/memory/known-maps.ts';
import { findPlaces } from '../../store/places.ts';
import { readInput, readJson } from './input-files.ts';

/** `name`: the id of a map, the program's or an own one, or a map file; without it the one map whose size and fingerprint fit. */
export async function readMap(name: string | undefined, image: Uint8Array): Promise<Result<MemoryMap>> {
  const known = await new KnownMaps(path.join(findPlaces().data, 'maps')).read();
  if (name === undefined) return fittingMap(image, known);
  if (!name.includes('.') && !name.includes('/')) {
    const found = known.find(name);
    if (found.ok || found.problem.code !== 'map-unknown') return found;
    return failed('map-unknown', `There is no memory map "${name}"; give ${sayIds(known)} or a map file.`);
  }
  const json = await readJson(name);
  return json.ok ? parseMemoryMap(json.value) : json;
}

function fittingMap(image: Uint8Array, known: MapCatalogue): Result<MemoryMap> {
  if (image.length === 0) return failed('image-empty', 'The image is empty; read the memory again.');
  const only = known.onlyFitting(image);
  if (!only.ok) return only;
  if (only.value !== null) return done(only.value);
  const cut = known.maps.filter(({ map }) => isMarked(image, map)).map(({ map }) => checkImage(image, map));
  if (cut[0] != null && cut.length === 1) return { ok: false, problem: cut[0] };
  return failed(
    'image-no-map',
    `No memory map fits this image of ${image.length} bytes; give --map with ${sayIds(known)} or a map file.`,
  );
}

/** The image and its map, checked against each other; `copy` is a second reading of the same memory. */
export async function readImage(
  file: string,
  mapName: string | undefined,
): Promise<Result<{ readonly image: Uint8Array; readonly map: MemoryMap }>> {
  const image = await readInput(file);
  if (!image.ok) return image;
  const unfit = checkImageFile(image.value);
  if (unfit !== null) return { ok: false, problem: unfit };
  const map = await readMap(mapName, image.value);
  if (!map.ok) return map;
  const problem = checkImage(image.value, map.value);
  return problem === null ? done({ image: image.value, map: map.value }) : { ok: false, problem };
}

/** Whether the fingerprint is there, whatever the size: a truncated or padded dump is told by how many bytes. */
function isMarked(image: Uint8Array, { fingerprint }: MemoryMap): boolean {
  if (fingerprint.length === 0) return false;
  return fingerprint.every(({ offset, bytes }) => {
    const wanted = readHex(bytes);
    return wanted.ok && wanted.value.every((byte, index) => image[offset + index] === byte);
  });
}

function sayIds({ maps }: MapCatalogue): string {
  return maps.map(({ map }) => map.id).join(', ');
}
