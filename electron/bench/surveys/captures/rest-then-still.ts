/** The rest of a stick: its releases, and then, where they are enough for a survey, a longer stretch untouched. */
import { LEAST_RELEASES } from '../../../../core/capture/evidence/least-releases.ts';
import type { GuideOptions } from '../../../../core/capture/guide/capture-guide.ts';
import { RestGuide } from '../../../../core/capture/guide/rest-guide.ts';
import { StillGuide } from '../../../../core/capture/guide/still-guide.ts';
import type { StickGuide } from './guided-capture.ts';

export class RestThenStill implements StickGuide {
  readonly releases: RestGuide;
  readonly #options: GuideOptions;
  /** Once the releases are taken. */
  #still: StillGuide | null = null;

  constructor(options: GuideOptions, releases: number) {
    this.#options = options;
    this.releases = new RestGuide({ ...options, releases });
  }

  get rests(): RestGuide['rests'] {
    return this.releases.rests;
  }

  get phase(): RestGuide['phase'] {
    return this.#still === null ? this.releases.phase : 'dwelling';
  }

  get isDone(): boolean {
    if (!this.releases.isDone) return false;
    // Fewer releases are a look, not a survey: no noise over time is asked for.
    return this.rests.length < LEAST_RELEASES || this.#still?.isDone === true;
  }

  get prompt(): string {
    return this.#still?.prompt ?? this.releases.prompt;
  }

  reading(t: number, x: number, y: number, buttonDown: boolean): void {
    this.#still?.reading(t, x, y, buttonDown);
    this.releases.reading(t, x, y, buttonDown);
    this.#goOn(t);
  }

  advance(t: number): void {
    this.#still?.advance(t);
    this.releases.advance(t);
    this.#goOn(t);
  }

  gap(): void {
    this.#still?.gap();
    this.releases.gap();
  }

  repeat(t: number): void {
    this.#still = null;
    this.releases.repeat(t);
  }

  #goOn(t: number): void {
    if (this.releases.isDone && this.#still === null) this.#still = new StillGuide({ ...this.#options, startUs: t });
  }
}
