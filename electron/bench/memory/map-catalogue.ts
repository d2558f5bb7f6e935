/** The memory maps as they stand at one moment: which is meant by an id, and which fits an image; never one in another's place. */
import { checkImage } from '../../../core/image/check-image.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { done, failed, type Problem, type Result } from '../../../core/result.ts';

/** `file` is null for a map of the program's own. */
export interface KnownMap {
  readonly map: MemoryMap;
  readonly file: string | null;
}

/** A file that holds no usable map: whose place it may take is what can still be read of it. */
export interface FaultyMap {
  readonly file: string;
  readonly problem: Problem;
  readonly id: string | null;
  readonly size: number | null;
}

export class MapCatalogue {
  /** The program's own first. */
  readonly maps: readonly KnownMap[];
  readonly faulty: readonly FaultyMap[];

  constructor(maps: readonly KnownMap[], faulty: readonly FaultyMap[]) {
    this.maps = maps;
    this.faulty = faulty;
  }

  /** What is to be put right in the folder of own maps, one sentence for each file. */
  get problems(): { readonly file: string; readonly says: string }[] {
    const twice = this.maps.flatMap(({ map, file }) => {
      const found = this.find(map.id);
      return file === null || found.ok || found.problem.code !== 'map-two' ? [] : [{ file, says: found.problem.says }];
    });
    return [...this.faulty.map(({ file, problem }) => ({ file, says: problem.says })), ...twice];
  }

  /** Refused: an id that two maps have, and one that a faulty file has or may have. */
  find(id: string): Result<MemoryMap> {
    const claim = this.faulty.find((one) => (one.id ?? one.file.replace(/\.json$/u, '')) === id);
    if (claim !== undefined) return { ok: false, problem: claim.problem };
    const holders = this.maps.filter(({ map }) => map.id === id);
    const [first] = holders;
    if (holders.length > 1) return failed('map-two', `${sayHolders(id, holders)}.`);
    if (first !== undefined) return done(first.map);
    const unread = this.faulty.find((one) => one.id === null);
    if (unread !== undefined) return { ok: false, problem: unread.problem };
    return failed('map-unknown', `There is no memory map "${id}"; choose one from the list or add its file.`);
  }

  /** Every map that was made for an image of this size and fingerprint. */
  fitting(image: Uint8Array): MemoryMap[] {
    return this.maps.map(({ map }) => map).filter((map) => checkImage(image, map) === null);
  }

  /**
   * The one that fits, or null; refused where two do, and where a faulty file may be another. An own map without a fingerprint says
   * of a size alone that it fits: it is no second beside one of the program's, whose fingerprint is there.
   */
  onlyFitting(image: Uint8Array): Result<MemoryMap | null> {
    const all = this.maps.filter(({ map }) => checkImage(image, map) === null);
    const isKnown = all.some(({ file }) => file === null);
    const rivals = all.filter(({ map, file }) => file === null || !isKnown || map.fingerprint.length > 0);
    const fitting = rivals.map(({ map }) => map);
    const maybe = this.faulty.find(({ size }) => size === null || size === image.length);
    if (maybe !== undefined) return { ok: false, problem: maybe.problem };
    const [first = null] = fitting;
    if (fitting.length < 2) return done(first);
    const ids = fitting.map(({ id }) => id).join(' and ');
    return failed(
      'map-two',
      `The maps ${ids} all fit this image; choose one by its id (--map ID), or remove or rename one of their files.`,
    );
  }
}

function sayHolders(id: string, holders: readonly KnownMap[]): string {
  const own = holders.flatMap(({ file }) => file ?? []).join(' and ');
  return own.includes(' and ')
    ? `The files ${own} both hold a memory map "${id}"; remove one, or give it another id`
    : `The program has a memory map "${id}" of its own and the file ${own} holds another; remove the file, or give its map another id`;
}
