/** The warm-up of a survey: the guide of core, told to the screen and to the hand of a simulated pad. */
import type { GuideOptions } from '../../../../core/capture/guide/capture-guide.ts';
import { WarmUpGuide, type TimedRest, type WarmUpJudgement } from '../../../../core/capture/guide/warm-up-guide.ts';
import type { CaptureRun, CaptureView, HandWish, LiveReading, SurveyState } from './capture-run.ts';
import { emptyView } from '../survey-view.ts';
import type { Asked } from '../survey-words.ts';

export class WarmUpCapture implements CaptureRun {
  readonly #guide: WarmUpGuide;
  readonly #asked: Asked;
  readonly #rests: SurveyState['rests'];

  constructor(
    options: GuideOptions,
    judge: (dwells: readonly TimedRest[]) => WarmUpJudgement,
    asked: Asked,
    rests: SurveyState['rests'],
  ) {
    this.#guide = new WarmUpGuide({ ...options, judge });
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
    const { phase, toward, dwells, judgement } = this.#guide;
    const { drift, steady } = judgement;
    return {
      ...emptyView(this.#asked, this.#rests),
      phase,
      toward: phase === 'waiting' || phase === 'pushing' ? toward : null,
      warmUp: { dwells: dwells.length, drift: drift === null ? null : { ...drift }, steady },
    };
  }

  wish(): HandWish | null {
    const { phase, toward } = this.#guide;
    return phase === 'waiting' && toward !== null ? { does: 'pushAndLetGo', toward } : null;
  }
}
