/** The memory maps: those of the program, and the technician's own as files in the data folder. */
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import { checkImage } from '../../core/image/check-image.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import { memoryMapSchema, parseMemoryMap } from '../../core/image/parse-memory-map.ts';
import { done, failed, type Result } from '../../core/result.ts';
import type { Reply } from '../../shared/contract.ts';
import { readJson, writeWhole } from '../store/atomic-file.ts';
import { makeFolder } from '../store/own-folder.ts';
import { storageProblem } from '../store/storage-problem.ts';

export type MapSummary = Reply<'maps.list'>[number];

const ENDING = '.json';

export class MapShelf {
  readonly #folder: string;
  readonly #now: () => Date;

  constructor(folder: string, now: () => Date) {
    this.#folder = folder;
    this.#now = now;
  }

  /** The program's own first. A file that is no map is set aside or passed over. */
  async list(): Promise<readonly MapSummary[]> {
    const names = await readdir(this.#folder).catch(() => []);
    const own = await Promise.all(names.filter((name) => name.endsWith(ENDING)).map((name) => this.#read(name)));
    return [
      ...bundledMaps.map((map) => ({ map, bundled: true })),
      ...own.flatMap((map) => (map === null ? [] : [{ map, bundled: false }])),
    ];
  }

  async find(id: string): Promise<Result<MemoryMap>> {
    const found = (await this.list()).find(({ map }) => map.id === id);
    if (found !== undefined) return done(found.map);
    return failed('map-unknown', `There is no memory map "${id}"; choose one from the list or add its file.`);
  }

  /** Every map that was made for an image of this size and fingerprint. */
  async fitting(image: Uint8Array): Promise<readonly MemoryMap[]> {
    return (await this.list()).map(({ map }) => map).filter((map) => checkImage(image, map) === null);
  }

  /** A map file's text; an own map of the same id is replaced, one of the program's is not. */
  async add(text: string): Promise<Result<MapSummary>> {
    let value: unknown;
    try {
      value = JSON.parse(text);
    } catch {
      return failed('memory-map', 'The file is not JSON; choose a memory map file.');
    }
    const map = parseMemoryMap(value);
    return map.ok ? this.save(map.value) : map;
  }

  async save(map: MemoryMap): Promise<Result<MapSummary>> {
    if (bundledMaps.some(({ id }) => id === map.id))
      return failed('map-bundled', `The program has a map "${map.id}" of its own; give the map another id.`);
    const file = path.join(this.#folder, `${map.id}${ENDING}`);
    try {
      await makeFolder(this.#folder);
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', file) };
    }
    const written = await writeWhole(file, `${JSON.stringify(map, null, 2)}\n`);
    return written.ok ? done({ map, bundled: false }) : written;
  }

  async #read(name: string): Promise<MemoryMap | null> {
    const read = await readJson(path.join(this.#folder, name), memoryMapSchema, this.#now());
    const map = read.kind === 'read' ? parseMemoryMap(read.value) : null;
    return map?.ok === true ? map.value : null;
  }
}
