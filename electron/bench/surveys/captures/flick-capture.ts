/** A flick capture of a survey: the guide of core, told to the screen and to the hand of a simulated pad. */
import type { GuideOptions } from '../../../../core/capture/guide/capture-guide.ts';
import { FlickGuide } from '../../../../core/capture/guide/flick-guide.ts';
import type { CaptureRun, CaptureView, HandWish, LiveReading, SurveyState } from './capture-run.ts';
import { emptyView } from '../survey-view.ts';
import type { Asked } from '../survey-words.ts';

export class FlickCapture implements CaptureRun {
  readonly #guide: FlickGuide;
  readonly #asked: Asked;
  readonly #rests: SurveyState['rests'];

  constructor(options: GuideOptions, asked: Asked, rests: SurveyState['rests']) {
    this.#guide = new FlickGuide({ ...options, flicks: asked.flicks, rests });
    this.#asked = asked;
    this.#rests = rests;
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

  confirm(): void {
    this.#guide.confirm();
  }

  get isDone(): boolean {
    return this.#guide.isDone;
  }

  get prompt(): string {
    return this.#guide.prompt;
  }

  view(): CaptureView {
    const { phase, toward, taken, asked } = this.#guide;
    return {
      ...emptyView(this.#asked, this.#rests),
      phase,
      toward: phase === 'settling' ? null : toward,
      flicks: { taken: [...taken], asked },
    };
  }

  wish(): HandWish | null {
    const { phase, toward } = this.#guide;
    return phase === 'waiting' && toward !== null ? { does: 'flick', toward } : null;
  }
}
