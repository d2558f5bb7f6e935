/** A rim capture of a survey: the guide of core, told to the screen and to the hand of a simulated pad. */
import type { GuideOptions } from '../../../../core/capture/guide/capture-guide.ts';
import { RimGuide } from '../../../../core/capture/guide/rim-guide.ts';
import type { CaptureRun, CaptureView, HandWish, LiveReading, SurveyState } from './capture-run.ts';
import { emptyView } from '../survey-view.ts';
import type { Asked } from '../survey-words.ts';

export class RimCapture implements CaptureRun {
  readonly #guide: RimGuide;
  readonly #asked: Asked;
  readonly #rests: SurveyState['rests'];

  constructor(options: GuideOptions, asked: Asked, rests: SurveyState['rests']) {
    this.#guide = new RimGuide({ ...options, turns: asked.turns, rests });
    this.#asked = asked;
    this.#rests = rests;
  }

  reading(t: number, { x, y }: LiveReading): void {
    this.#guide.reading(t, x, y);
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

  /** Good once the turns are there and only stretches are open: before that a press by mistake would end the capture. */
  confirm(): void {
    const { clockwise, counterClockwise } = this.#guide.turns;
    if (Math.min(clockwise, counterClockwise) >= this.#asked.turns) this.#guide.confirm();
  }

  get isDone(): boolean {
    return this.#guide.isDone;
  }

  get prompt(): string {
    return this.#guide.prompt;
  }

  view(): CaptureView {
    const { phase, turns, underway, covered, uncovered } = this.#guide;
    return {
      ...emptyView(this.#asked, this.#rests),
      phase,
      turns: { ...turns, asked: this.#asked.turns, underway },
      covered: covered.map(({ clockwise, counterClockwise }) => ({ clockwise, counterClockwise })),
      uncovered: [...uncovered],
    };
  }

  wish(): HandWish | null {
    const { phase, wanted, more } = this.#guide;
    return phase === 'waiting' && wanted !== null ? { does: 'turn', turns: more, way: wanted } : null;
  }
}
