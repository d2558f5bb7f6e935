/** A rest capture of a survey: the guide of core, told to the screen and to the hand of a simulated pad. */
import type { GuideOptions } from '../../core/capture/capture-guide.ts';
import { RestGuide } from '../../core/capture/rest-guide.ts';
import type { CaptureRun, CaptureView, HandWish, LiveReading } from './capture-run.ts';
import { emptyView } from './survey-view.ts';
import type { Asked } from './survey-words.ts';

export class RestCapture implements CaptureRun {
  readonly #guide: RestGuide;
  readonly #asked: Asked;

  constructor(options: GuideOptions, asked: Asked) {
    this.#guide = new RestGuide({ ...options, releases: asked.releases });
    this.#asked = asked;
  }

  reading(t: number, { x, y, buttonDown }: LiveReading): void {
    this.#guide.reading(t, x, y, buttonDown);
  }

  advance(t: number): void {
    this.#guide.advance(t);
  }

  gap(): void {
    this.#guide.gap();
  }

  repeat(t: number): void {
    this.#guide.repeat(t);
  }

  /** Every release is taken by itself: there is nothing to confirm. */
  confirm(): void {
    return undefined;
  }

  get isDone(): boolean {
    return this.#guide.isDone;
  }

  get prompt(): string {
    return this.#guide.prompt;
  }

  view(): CaptureView {
    const { phase, toward, rests, asked } = this.#guide;
    return {
      ...emptyView(this.#asked, [...rests]),
      phase,
      // Only while there is something to push toward.
      toward: phase === 'waiting' || phase === 'pushing' ? toward : null,
      releases: { taken: rests.length, asked },
    };
  }

  wish(): HandWish | null {
    const { phase, toward } = this.#guide;
    return phase === 'waiting' && toward !== null ? { does: 'pushAndLetGo', toward } : null;
  }
}
