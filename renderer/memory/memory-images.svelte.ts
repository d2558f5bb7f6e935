/** Kept images, memory maps, the image that is open, and the plan for it. Owns state, renders nothing. */
import { createContext } from 'svelte';
import { failed, type Problem, type Result } from '../../core/result.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { Reply, Request } from '../../shared/contract.ts';
import { fromBase64, piecesOf } from '../kit/page/file-pieces.ts';

export type ImageSummary = Reply<'images.list'>[number];
export type ImageDetails = Reply<'images.open'>;
type MapList = Reply<'maps.list'>;
export type MapSummary = MapList['maps'][number];
export type Plan = Reply<'images.plan'>;
export type PlanWish = Request<'images.plan'>['wish'];
export type Comparison = Reply<'images.compare'>;

export class MemoryImages {
  /** The one kept last first. */
  list = $state.raw<readonly ImageSummary[]>([]);
  maps = $state.raw<readonly MapSummary[]>([]);
  /** Own map files that are not used, each with its fault. */
  mapProblems = $state.raw<MapList['problems']>([]);
  /** The open image under its map. */
  details = $state.raw<ImageDetails | null>(null);
  plan = $state.raw<Plan | null>(null);
  /** What the plan is for, or the one that is on its way; null without one, and where it came as a patch file. */
  plannedFor = $state.raw<PlanWish | null>(null);
  /** Share of a file that has been handed over while one is imported; null otherwise. */
  importing = $state<number | null>(null);
  #problem = $state.raw<Problem | null>(null);
  #planProblem = $state.raw<Problem | null>(null);
  #asked = 0;
  #planned = 0;
  readonly #bench: BenchApi;

  constructor(bench: BenchApi) {
    this.#bench = bench;
  }

  /** Why the last thing asked for was not done, or null. */
  get problem(): Problem | null {
    return this.#problem;
  }

  /** Why there is no plan, or null. */
  get planProblem(): Problem | null {
    return this.#planProblem;
  }

  /** Lists images and maps and follows them. Returns the function that ends it. */
  async follow(): Promise<() => void> {
    const ends = [
      this.#bench.listen('images.changed', (list) => (this.list = list)),
      this.#bench.listen('maps.changed', (maps) => this.#takeMaps(maps)),
    ];
    const [images, maps] = [await this.#bench.call('images.list', {}), await this.#bench.call('maps.list', {})];
    this.#problem = images.ok ? (maps.ok ? null : maps.problem) : images.problem;
    if (images.ok) this.list = images.value;
    if (maps.ok) this.#takeMaps(maps.value);
    return () => {
      for (const end of ends) end();
    };
  }

  /** Opens a kept image under a map, under the one that fits where `map` is null. The newest call wins. */
  async open(image: string | null, map: string | null): Promise<void> {
    const asked = (this.#asked += 1);
    this.dropPlan();
    // A plan or a layer of one image must never stand under the name of another.
    if (image !== this.details?.image) this.details = null;
    this.#problem = null;
    if (image === null) return;
    const reply = await this.#bench.call('images.open', { image, map });
    if (asked !== this.#asked) return;
    this.#settle(reply);
    if (reply.ok) this.details = reply.value;
  }

  /** Hands an image file over in pieces. Answers with the kept image, or null where it was refused. */
  async import(file: File): Promise<ImageSummary | null> {
    const upload = crypto.randomUUID();
    this.importing = 0;
    let handed = 0;
    let taken: ImageSummary | null = null;
    for await (const { piece, last } of piecesOf(file)) {
      const reply = await this.#bench.call('images.import', { upload, name: file.name.slice(0, 200), piece, last });
      this.#settle(reply);
      if (!reply.ok) break;
      handed += piece.length * 0.75;
      this.importing = file.size === 0 ? 1 : Math.min(1, handed / file.size);
      taken = reply.value.image;
    }
    this.importing = null;
    return taken;
  }

  /** The bytes of a kept image, or null where they could not be read. */
  async export(image: string): Promise<Blob | null> {
    const pieces: Uint8Array<ArrayBuffer>[] = [];
    let from: number | null = 0;
    while (from !== null) {
      const reply: Result<{ piece: string; next: number | null }> = await this.#bench.call('images.export', {
        image,
        from,
      });
      const bytes = reply.ok ? fromBase64(reply.value.piece) : null;
      if (!reply.ok || bytes === null) {
        this.#settle(reply.ok ? failed('export-broken', 'A piece of the image came damaged; save it again.') : reply);
        return null;
      }
      pieces.push(bytes);
      from = reply.value.next;
    }
    this.#problem = null;
    return new Blob(pieces, { type: 'application/octet-stream' });
  }

  /** Plans changes for the open image; the newest wish wins. */
  async planFor(wish: PlanWish): Promise<void> {
    const { details } = this;
    if (details === null) return;
    const planned = (this.#planned += 1);
    this.plannedFor = wish;
    const reply = await this.#bench.call('images.plan', { image: details.image, map: details.map.id, wish });
    if (planned !== this.#planned) return;
    this.#takePlan(reply);
  }

  /** Reads a patch file's text; it must fit the open image. */
  async readPatch(text: string): Promise<void> {
    const planned = (this.#planned += 1);
    this.plannedFor = null;
    const reply = await this.#bench.call('images.readPatch', { text });
    if (planned !== this.#planned) return;
    const { details } = this;
    if (reply.ok && details !== null && reply.value.image !== details.image)
      this.#takePlan(
        failed('patch-image', 'The patch was planned for another image than the open one; open that image first.'),
      );
    else this.#takePlan(reply);
  }

  dropPlan(): void {
    this.#planned += 1;
    this.plan = null;
    this.plannedFor = null;
    this.#planProblem = null;
  }

  /** Makes the patched image; the open one stays as it is. */
  async apply(): Promise<ImageSummary | null> {
    if (this.plan === null) return null;
    const reply = await this.#bench.call('images.apply', { plan: this.plan.plan });
    this.#planProblem = reply.ok ? null : reply.problem;
    return reply.ok ? reply.value : null;
  }

  /** Adds a map file's text. */
  async addMap(text: string): Promise<MapSummary | null> {
    const reply = await this.#bench.call('maps.add', { text });
    this.#settle(reply);
    return reply.ok ? reply.value : null;
  }

  /** Calls a map proven by the survey that was taken after a write with it; null where the bench refuses. */
  async prove(map: string, survey: string): Promise<MapSummary | null> {
    const reply = await this.#bench.call('maps.prove', { map, survey });
    this.#settle(reply);
    return reply.ok ? reply.value : null;
  }

  #takeMaps({ maps, problems }: MapList): void {
    this.maps = maps;
    this.mapProblems = problems;
  }

  #takePlan(reply: Result<Plan>): void {
    this.plan = reply.ok ? reply.value : null;
    this.#planProblem = reply.ok ? null : reply.problem;
  }

  #settle(reply: Result<unknown>): void {
    this.#problem = reply.ok ? null : reply.problem;
  }
}

/** Handed down once by the app. */
export const [useImages, provideImages] = createContext<MemoryImages>();
