/** What a survey takes, in order: what is wanted of each stick, and the pad's inputs once. */
import type { Disturbance } from '../../../core/capture/evidence/disturbance.ts';
import type { PadLayout } from '../../../core/pad/layout.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import type { EventPayload, Request } from '../../../shared/contract.ts';

type CaptureStates = EventPayload<'survey.state'>['captures'];
export type SurveyPurpose = CaptureStates[number]['purpose'];
type CaptureState = CaptureStates[number]['state'];

export interface PlannedCapture {
  /** Null for the inputs, which are the pad's. */
  readonly stick: StickId | null;
  readonly purpose: SurveyPurpose;
  /** What a disturbance is. */
  readonly of?: Disturbance;
}

/** Warm-up comes before what is measured warm; rest before the rim, whose directions are about it. */
const STICK_STEPS = ['warmUp', 'rest', 'rim', 'travel', 'flick', 'disturbance'] as const;

export class SurveyPlan {
  readonly #captures: readonly PlannedCapture[];
  readonly #states: CaptureState[];
  #next = 0;

  constructor(captures: readonly PlannedCapture[]) {
    this.#captures = captures;
    this.#states = captures.map(() => 'open');
  }

  /** The capture that is next or under way; null when all are over. */
  get current(): PlannedCapture | null {
    return this.#captures[this.#next] ?? null;
  }

  get index(): number | null {
    return this.current === null ? null : this.#next;
  }

  /** Ends the current capture and goes on to the next. */
  end(state: 'taken' | 'skipped'): void {
    this.#states[this.#next] = state;
    this.#next += 1;
  }

  /** How each capture stands, in order. */
  captures(): CaptureStates {
    return this.#captures.map(({ stick, purpose, of = null }, index) => {
      return { stick, purpose, of, state: this.#states[index] ?? 'open' };
    });
  }
}

export function planSurvey(request: Request<'survey.start'>, layout: PadLayout): PlannedCapture[] {
  const steps = new Set(request.steps);
  const ofStick = (stick: StickId): PlannedCapture[] =>
    STICK_STEPS.filter((purpose) => steps.has(purpose)).flatMap((purpose): PlannedCapture[] => {
      if (purpose !== 'disturbance') return [{ stick, purpose }];
      return request.disturbances
        .filter((of) => of !== 'other-stick' || layout.sticks[stick === 'left' ? 'right' : 'left'] !== undefined)
        .map((of) => ({ stick, purpose, of }));
    });
  const inputs: PlannedCapture[] = steps.has('inputs') ? [{ stick: null, purpose: 'inputs' }] : [];
  return [...request.sticks.flatMap(ofStick), ...inputs];
}
