/** A disturbance capture of a survey: the guide of core, told to the screen and to the hand of a simulated pad. */
import type { GuideOptions } from '../../../../core/capture/guide/capture-guide.ts';
import type { Disturbance } from '../../../../core/capture/evidence/disturbance.ts';
import { DisturbanceGuide, type Beside } from '../../../../core/capture/guide/disturbance-guide.ts';
import { middleOf, tiltBetween } from '../../../../core/capture/evidence/main-rest.ts';
import type { PadLayout } from '../../../../core/pad/layout.ts';
import type { CaptureRun, CaptureView, HandWish, LiveReading, SurveyState } from './capture-run.ts';
import { emptyView } from '../survey-view.ts';
import { DISTURBED_DWELLS, type Asked } from '../survey-words.ts';

export class DisturbanceCapture implements CaptureRun {
  readonly #guide: DisturbanceGuide;
  readonly #of: Disturbance;
  readonly #other: PadLayout['sticks']['left'];
  /** Where the other stick's axes stand in a reading. */
  readonly #otherAt: number;
  readonly #click: number | undefined;
  readonly #asked: Asked;
  readonly #rests: SurveyState['rests'];

  constructor(of: Disturbance, options: GuideOptions, layout: PadLayout, asked: Asked, rests: SurveyState['rests']) {
    const isLeft = options.stick === 'left';
    this.#guide = new DisturbanceGuide({ ...options, of, dwells: DISTURBED_DWELLS });
    this.#of = of;
    this.#other = layout.sticks[isLeft ? 'right' : 'left'];
    this.#otherAt = isLeft ? 2 : 0;
    this.#click = layout.clicks[options.stick];
    this.#asked = asked;
    this.#rests = rests;
  }

  reading(t: number, reading: LiveReading): void {
    this.#guide.reading(t, reading, this.#beside(reading));
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

  /** Every dwell is taken by itself: there is nothing to confirm. */
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
    const { phase, toward, taken, asked } = this.#guide;
    return {
      ...emptyView(this.#asked, this.#rests),
      phase,
      toward: phase === 'waiting' || phase === 'pushing' ? toward : null,
      releases: { taken, asked },
    };
  }

  wish(): HandWish | null {
    const { phase, toward } = this.#guide;
    if (phase !== 'waiting') return null;
    if (this.#of === 'click') return { does: 'holdClick', button: this.#click ?? 1 };
    return toward === null ? null : { does: 'pushAndLetGo', toward, during: this.#of };
  }

  #beside({ buttonDown, slot }: LiveReading): Beside {
    const bit = (this.#click ?? 1) - 1;
    const isDown = (((slot.buttons[bit >>> 5] ?? 0) >>> (bit & 31)) & 1) === 1;
    return {
      buttonDown,
      clickDown: this.#click === undefined ? buttonDown : isDown,
      otherTilt: this.#otherTilt(slot.axes),
    };
  }

  #otherTilt(axes: Float64Array): number | null {
    const [x = Number.NaN, y = Number.NaN] = [axes[this.#otherAt], axes[this.#otherAt + 1]];
    if (this.#other === undefined || Number.isNaN(x) || Number.isNaN(y)) return null;
    return tiltBetween(this.#other, middleOf(this.#other), { x, y });
  }
}
