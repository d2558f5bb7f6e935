/** What a survey takes, in order: the rest and the rim of each stick. */
import type { StickId } from '../../core/pad/stick.ts';

export type SurveyPurpose = 'rest' | 'rim';
export type CaptureState = 'open' | 'taken' | 'skipped';

export interface PlannedCapture {
  readonly stick: StickId;
  readonly purpose: SurveyPurpose;
}

export class SurveyPlan {
  readonly #captures: readonly PlannedCapture[];
  readonly #states: CaptureState[];
  #next = 0;

  constructor(sticks: readonly StickId[]) {
    this.#captures = sticks.flatMap((stick) => [
      { stick, purpose: 'rest' },
      { stick, purpose: 'rim' },
    ]);
    this.#states = this.#captures.map(() => 'open');
  }

  /** The capture that is next or under way; null when all are over. */
  get current(): PlannedCapture | null {
    return this.#captures[this.#next] ?? null;
  }

  /** Ends the current capture and goes on to the next. */
  end(state: 'taken' | 'skipped'): void {
    this.#states[this.#next] = state;
    this.#next += 1;
  }

  /** How each stick stands, in order. */
  sticks(): { stick: StickId; rest: CaptureState; rim: CaptureState }[] {
    const sticks = [...new Set(this.#captures.map(({ stick }) => stick))];
    return sticks.map((stick) => ({ stick, rest: this.#stateOf(stick, 'rest'), rim: this.#stateOf(stick, 'rim') }));
  }

  #stateOf(stick: StickId, purpose: SurveyPurpose): CaptureState {
    const index = this.#captures.findIndex((one) => one.stick === stick && one.purpose === purpose);
    return this.#states[index] ?? 'open';
  }
}
