/** What the image commands are given: an image, a memory map by its id or its file. */
import { checkImage } from '../../../core/image/check-image.ts';
import { checkImageFile } from '../../../core/image/check-image-file.ts';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { readHex } from '../../../core/hid/hex.ts';
import { parseMemoryMap } from '../../../core/image/parse-memory-map.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { readInput, readJson } from './input-files.ts';

/** `name`: the id of a bundled map or a map file; without it the one bundled map whose size and fingerprint fit. */
export async function readMap(name: string | undefined, image: Uint8Array): Promise<Result<MemoryMap>> {
  if (name === undefined) {
    if (image.length === 0) return failed('image-empty', 'The image is empty; read the memory again.');
    const fitting = bundledMaps.filter((map) => checkImage(image, map) === null);
    const [only] = fitting;
    if (only !== undefined && fitting.length === 1) return done(only);
    const cut = bundledMaps.filter((map) => isMarked(image, map)).map((map) => checkImage(image, map));
    if (cut[0] != null && cut.length === 1) return { ok: false, problem: cut[0] };
    return failed(
      'image-no-map',
      `No bundled map fits this image of ${image.length} bytes; give --map with ${knownIds()} or a map file.`,
    );
  }
  const bundled = bundledMaps.find(({ id }) => id === name);
  if (bundled !== undefined) return done(bundled);
  if (!name.includes('.') && !name.includes('/'))
    return failed('map-unknown', `There is no bundled map "${name}"; give ${knownIds()} or a map file.`);
  const json = await readJson(name);
  return json.ok ? parseMemoryMap(json.value) : json;
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
function isMarked(image: Uint8Array, map: MemoryMap): boolean {
  return map.fingerprint.every(({ offset, bytes }) => {
    const wanted = readHex(bytes);
    return wanted.ok && wanted.value.every((byte, index) => image[offset + index] === byte);
  });
}

function knownIds(): string {
  return bundledMaps.map(({ id }) => id).join(', ');
}
