/** A rest capture of a survey: the guides of core, told to the screen and to the hand of a simulated pad. */
import type { GuideOptions } from '../../../../core/capture/guide/capture-guide.ts';
import { LEAST_RELEASES } from '../../../../core/capture/evidence/least-releases.ts';
import { RestGuide } from '../../../../core/capture/guide/rest-guide.ts';
import { StillGuide } from '../../../../core/capture/guide/still-guide.ts';
import type { CaptureRun, CaptureView, HandWish, LiveReading } from './capture-run.ts';
import { emptyView } from '../survey-view.ts';
import type { Asked } from '../survey-words.ts';

export class RestCapture implements CaptureRun {
  readonly #options: GuideOptions;
  readonly #guide: RestGuide;
  readonly #asked: Asked;
  /** Once the releases are taken. */
  #still: StillGuide | null = null;

  constructor(options: GuideOptions, asked: Asked) {
    this.#options = options;
    this.#guide = new RestGuide({ ...options, releases: asked.releases });
    this.#asked = asked;
  }

  reading(t: number, { x, y, buttonDown }: LiveReading): void {
    this.#still?.reading(t, x, y, buttonDown);
    this.#guide.reading(t, x, y, buttonDown);
    this.#goOn(t);
  }

  advance(t: number): void {
    this.#still?.advance(t);
    this.#guide.advance(t);
    this.#goOn(t);
  }

  gap(): void {
    this.#still?.gap();
    this.#guide.gap();
  }

  repeat(t: number): void {
    this.#still = null;
    this.#guide.repeat(t);
  }

  /** Every release is taken by itself: there is nothing to confirm. */
  confirm(): void {
    return undefined;
  }

  get isDone(): boolean {
    if (!this.#guide.isDone) return false;
    // Fewer releases are a look, not a survey: no noise over time is asked for.
    return this.#guide.rests.length < LEAST_RELEASES || this.#still?.isDone === true;
  }

  get prompt(): string {
    return this.#still?.prompt ?? this.#guide.prompt;
  }

  view(): CaptureView {
    const { phase, toward, rests, asked } = this.#guide;
    return {
      ...emptyView(this.#asked, [...rests]),
      phase: this.#still === null ? phase : 'dwelling',
      // Only while there is something to push toward.
      toward: phase === 'waiting' || phase === 'pushing' ? toward : null,
      releases: { taken: rests.length, asked },
    };
  }

  wish(): HandWish | null {
    const { phase, toward } = this.#guide;
    return phase === 'waiting' && toward !== null ? { does: 'pushAndLetGo', toward } : null;
  }

  #goOn(t: number): void {
    if (this.#guide.isDone && this.#still === null) this.#still = new StillGuide({ ...this.#options, startUs: t });
  }
}
