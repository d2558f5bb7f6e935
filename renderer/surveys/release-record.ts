/** Which directions the releases of the running survey were let go from: the state itself tells only how many there are. */
import type { SurveyRunState } from './survey-words.ts';

export class ReleaseRecord {
  /** Degrees counter-clockwise from +x, in the order taken; null where it was not asked for one. */
  directions: readonly (number | null)[] = [];
  #of = '';
  /** The direction that was asked for last. */
  toward: number | null = null;

  take(state: SurveyRunState): void {
    const of = `${state.survey} ${state.stick ?? ''}`;
    if (of !== this.#of) {
      this.#of = of;
      this.directions = [];
      this.toward = null;
    }
    const taken = state.releases.taken;
    const kept = this.directions.slice(0, taken);
    while (kept.length < taken) kept.push(this.toward);
    this.directions = kept;
    // Kept through the phases after letting go, in which there is nothing to push toward.
    if (state.toward !== null) this.toward = state.toward;
  }
}
