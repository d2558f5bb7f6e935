/** Leads a hand through releases every few seconds until the rest no longer drifts; live, hands-free. */
import type { Pair } from '../../pad/stick.ts';
import type { GuideOptions } from './capture-guide.ts';
import { RestGuide } from './rest-guide.ts';
import type { RestPhase } from './rest-prompt.ts';

/** Between two releases: a part cools over minutes. */
const PAUSE_US = 4_000_000;

/** A rest point and when it was dwelt on, microseconds of the log. */
export interface TimedRest {
  readonly point: Pair;
  readonly startUs: number;
  readonly endUs: number;
}

/** What is known of the drift so far. */
export interface WarmUpJudgement {
  /** Counts a second over the last stretch, y up; null while it cannot be told. */
  readonly drift: Pair | null;
  /** False: the drift is significant, so wait. Null: too few dwells to tell. */
  readonly steady: boolean | null;
}

interface WarmUpOptions extends GuideOptions {
  readonly judge: (dwells: readonly TimedRest[]) => WarmUpJudgement;
}

/** Writes the marks of rest releases; ends by itself once the drift is no longer significant. */
export class WarmUpGuide {
  readonly #options: WarmUpOptions;
  readonly #dwells: TimedRest[] = [];
  #release: RestGuide;
  #dwellStartUs = 0;
  #pausedUs: number | null = null;
  #judgement: WarmUpJudgement = { drift: null, steady: null };
  #isConfirmed = false;

  constructor(options: WarmUpOptions) {
    this.#options = options;
    this.#release = this.#nextRelease(options.startUs);
  }

  get phase(): RestPhase | 'paused' {
    return this.#pausedUs === null ? this.#release.phase : 'paused';
  }

  get prompt(): string {
    return this.#pausedUs === null ? this.#release.prompt : this.#wait;
  }

  get toward(): number | null {
    return this.#pausedUs === null ? this.#release.toward : null;
  }

  get dwells(): readonly TimedRest[] {
    return this.#dwells;
  }

  get judgement(): WarmUpJudgement {
    return this.#judgement;
  }

  get isDone(): boolean {
    return this.#isConfirmed || this.#judgement.steady === true;
  }

  reading(t: number, x: number, y: number, buttonDown: boolean): void {
    if (this.isDone) return;
    if (this.#pausedUs === null) this.#release.reading(t, x, y, buttonDown);
    this.#look(t);
  }

  advance(t: number): void {
    if (this.isDone) return;
    if (this.#pausedUs === null) this.#release.advance(t);
    this.#look(t);
  }

  gap(): void {
    this.#release.gap();
  }

  /** Drops the last dwell. */
  repeat(t: number): void {
    if (this.#dwells.pop() !== undefined)
      this.#options.mark(t, 'repeat', { of: 'release', stick: this.#options.stick });
    this.#judgement = this.#options.judge(this.#dwells);
    this.#release = this.#nextRelease(t);
    this.#pausedUs = null;
  }

  /** The hand's word that it does not wait any longer. */
  confirm(): void {
    this.#isConfirmed = true;
  }

  #look(t: number): void {
    if (this.#pausedUs !== null) {
      if (t - this.#pausedUs < PAUSE_US) return;
      this.#pausedUs = null;
      this.#release = this.#nextRelease(t);
    } else if (this.#release.isDone) {
      const point = this.#release.rests[0];
      if (point !== undefined) this.#dwells.push({ point, startUs: this.#dwellStartUs, endUs: t });
      this.#judgement = this.#options.judge(this.#dwells);
      this.#pausedUs = t;
    }
  }

  #nextRelease(t: number): RestGuide {
    return new RestGuide({
      ...this.#options,
      startUs: t,
      releases: 1,
      first: this.#dwells.length,
      mark: (at, name, detail) => {
        if (name === 'dwell' && detail['edge'] === 'begin') this.#dwellStartUs = at;
        this.#options.mark(at, name, detail);
      },
    });
  }

  get #wait(): string {
    const { drift, steady } = this.#judgement;
    const taken = this.#dwells.length;
    if (steady === null || drift === null)
      return `Wait. ${taken} ${taken === 1 ? 'release is' : 'releases are'} too few to tell a drift.`;
    const perMinute = 60 * Math.max(Math.abs(drift.x), Math.abs(drift.y));
    return `Wait: the rest still drifts by ${perMinute < 10 ? perMinute.toFixed(1) : String(Math.round(perMinute))} counts a minute.`;
  }
}
