/** The memory maps: those of the program, and the technician's own as files in the data folder. */
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { parseMemoryMap } from '../../../core/image/parse-memory-map.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Reply } from '../../../shared/contract.ts';
import { writeWhole } from '../../store/atomic-file.ts';
import { readJsonFolder, sayFault, type FolderFile } from '../../store/json-folder.ts';
import { storageProblem } from '../../store/storage-problem.ts';
import { MapCatalogue, type FaultyMap, type KnownMap } from './map-catalogue.ts';

export type MapList = Reply<'maps.list'>;
type MapSummary = MapList['maps'][number];

export class KnownMaps {
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
  }

  /** As the files stand now. What a file is called says nothing of the map in it. */
  async read(): Promise<MapCatalogue> {
    const own = (await readJsonFolder(this.#folder)).map(mapIn);
    return new MapCatalogue(
      [...bundledMaps.map((map) => ({ map, file: null })), ...own.flatMap((one) => ('map' in one ? [one] : []))],
      own.flatMap((one) => ('map' in one ? [] : [one])),
    );
  }

  async list(): Promise<MapList> {
    const { maps, problems } = await this.read();
    return { maps: maps.map(({ map, file }) => ({ map, bundled: file === null })), problems };
  }

  async find(id: string): Promise<Result<MemoryMap>> {
    return (await this.read()).find(id);
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
    const known = await this.read();
    const found = known.find(map.id);
    if (!found.ok && found.problem.code === 'map-two') return found;
    const name = known.maps.find((one) => one.map.id === map.id)?.file ?? freeName(map.id, known);
    const file = path.join(this.#folder, name);
    try {
      await mkdir(this.#folder, { recursive: true });
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', file) };
    }
    const written = await writeWhole(file, `${JSON.stringify(map, null, 2)}\n`);
    return written.ok ? done({ map, bundled: false }) : written;
  }
}

/** A file of that name may hold another map, or one that is to be put right: neither is written over. */
function freeName(id: string, { maps, faulty }: MapCatalogue): string {
  const taken = [...maps, ...faulty].map(({ file }) => file);
  let name = `${id}.json`;
  for (let number = 2; taken.includes(name); number += 1) name = `${id}-${number}.json`;
  return name;
}

function mapIn({ name: file, read }: FolderFile): KnownMap | FaultyMap {
  const map = read.ok ? parseMemoryMap(read.value) : read;
  if (map.ok) return { map: map.value, file };
  const value = read.ok && typeof read.value === 'object' && read.value !== null ? read.value : {};
  return {
    file,
    problem: { ...map.problem, code: 'map-file', says: sayFault('Map file', file, map.problem.says) },
    id: 'id' in value && typeof value.id === 'string' ? value.id : null,
    size: 'size' in value && typeof value.size === 'number' ? value.size : null,
  };
}
