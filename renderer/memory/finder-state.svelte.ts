/** Where an image may hold a calibration that was measured or typed, and the map made of what is confirmed. Owns state. */
import type { StickMapping } from '../../core/mapping/mapping.ts';
import type { Problem, Result } from '../../core/result.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { Reply, Request } from '../../shared/contract.ts';
import type { MapSummary } from './memory-images.svelte.ts';

export type Places = Reply<'images.find'>;
export type FoundPlace = Places['places'][number];
export type PlaceReading = FoundPlace['readings'][number];
export type MapWish = Request<'maps.save'>;

export class FinderState {
  places = $state.raw<Places | null>(null);
  looking = $state(false);
  problem = $state.raw<Problem | null>(null);
  #asked = 0;
  /** What is looked for, or was found last. */
  #request: Request<'images.find'> | null = null;
  readonly #bench: BenchApi;

  constructor(bench: BenchApi) {
    this.#bench = bench;
  }

  /** By what a survey measured. The newest call wins. */
  async findBySurvey(image: string, survey: string): Promise<void> {
    await this.#find({ image, by: { survey } });
  }

  async findByValues(image: string, values: Readonly<Partial<Record<StickId, StickMapping>>>): Promise<void> {
    await this.#find({ image, by: { values } });
  }

  /** Drops what was found, or is still looked for, in another image or by another survey; typed numbers are of no survey. */
  keepOnlyOf(image: string | null, survey: string | null): void {
    if (this.#request === null) return;
    const { image: ofImage, by } = this.#request;
    if (ofImage === image && (!('survey' in by) || by.survey === survey)) return;
    this.#request = null;
    this.#asked += 1;
    this.places = null;
    this.looking = false;
    this.problem = null;
  }

  /** Saves the confirmed places as a map that is unproven. */
  async save(wish: MapWish): Promise<MapSummary | null> {
    const reply = await this.#bench.call('maps.save', wish);
    this.#settle(reply);
    return reply.ok ? reply.value : null;
  }

  async #find(request: Request<'images.find'>): Promise<void> {
    const asked = (this.#asked += 1);
    this.#request = request;
    this.places = null;
    this.looking = true;
    const reply = await this.#bench.call('images.find', request);
    if (asked !== this.#asked) return;
    this.looking = false;
    this.#settle(reply);
    if (reply.ok) this.places = reply.value;
  }

  #settle(reply: Result<unknown>): void {
    this.problem = reply.ok ? null : reply.problem;
  }
}
