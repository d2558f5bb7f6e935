/**
 * "Yours": the mapping a hand makes of the proposed one (or of now), one for each stick of each survey, with every step of
 * the way. Owns state, renders nothing. What cannot be is refused in a sentence, and the last good mapping stays.
 */
import { numberOf, type MappingNumber } from '../../core/mapping/mapping-number.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { NO_HISTORY, redo, takeStep, undo, type NudgeHistory } from '../../core/mapping/nudge-history.ts';
import { checkByHand, nearestNumber, setNumber, type HandLimits } from '../../core/mapping/set-number.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';
import type { Problem, Result } from '../../core/result.ts';
import { doubtOf, whyNotTaken, type Origin, type OwnMapping, type Taken } from './origin.ts';
import type { OverReload } from './over-reload.ts';

/** Steps in counts, the finest first. */
export const STEPS = [1, 4, 16, 64] as const;

export interface DeskSources {
  survey(): string | null;
  stick(): StickId;
  /** What a mapping of the stick has to fit; null without evidence. */
  limits(): HandLimits | null;
  now(): StickMapping | null;
  proposed(): StickMapping | null;
  /** Whose the survey's own numbers are. */
  origin(): Origin;
  readonly overReload: OverReload;
}

/** Why a change was refused, and of which number; null where it is of the whole mapping. */
export interface Refusal {
  readonly of: MappingNumber | null;
  readonly problem: Problem;
}

/** Milliseconds without another step after which the history is written down. */
const QUIET = 400;

export class MappingEditor {
  readonly #from: DeskSources;
  #histories = $state.raw<Readonly<Record<string, NudgeHistory<OwnMapping>>>>({});
  #refusal = $state.raw<Refusal | null>(null);
  /** Histories that are not written down yet, by their keys. */
  #unwritten: Readonly<Record<string, { readonly survey: string; readonly stick: StickId }>> = {};
  #timer: ReturnType<typeof setTimeout> | null = null;
  /** Counts that one key or one notch moves a mark. */
  step = $state(4);
  /** The step that is nobody else's: 50 is the trade's usual first one (common practice). */
  ownStep = $state(50);

  readonly #history: NudgeHistory<OwnMapping> = $derived.by(() => this.#historyOf(this.#from.stick()));
  /** Null before the first nudge, and where a survey with other limits kept what does not fit. */
  readonly own: OwnMapping | null = $derived.by(() => {
    const limits = this.#from.limits();
    const { present } = this.#history;
    return present === null || limits === null || !checkByHand(present, limits).ok ? null : present;
  });
  /** What the marks stand at, and a first nudge starts from: yours, else the proposed mapping, else now. */
  readonly base: StickMapping | null = $derived.by(() => this.own ?? this.#from.proposed() ?? this.#from.now());

  /** Whose yours is: the survey's, or that of what was taken. */
  readonly origin: Origin = $derived.by(() => this.own?.taken ?? this.#from.origin());
  /** What there is to doubt of the source of yours, one sentence; null where nothing is. */
  readonly doubt: string | null = $derived.by(() => doubtOf(this.own?.taken ?? null, this.#from.origin()));

  constructor(from: DeskSources) {
    this.#from = from;
  }

  /** Yours of every stick that has one, whether it fits or not. */
  get owns(): Partial<Record<StickId, OwnMapping>> {
    const made = STICKS.flatMap((stick) => {
      const { present } = this.#historyOf(stick);
      return present === null ? [] : [[stick, present] as const];
    });
    return Object.fromEntries(made);
  }

  get refusal(): Refusal | null {
    return this.#refusal;
  }

  get canUndo(): boolean {
    return this.#history.past !== null;
  }

  get canRedo(): boolean {
    return this.#history.future !== null;
  }

  /** The step after the chosen one, for a hand that wants to go faster. */
  get largerStep(): number {
    return STEPS.find((step) => step > this.step) ?? this.step * 4;
  }

  /** Moves one number by counts; refused where the mapping would not hold. */
  nudge(of: MappingNumber, counts: number): void {
    const { base } = this;
    if (base !== null) this.set(of, numberOf(base, of) + counts);
  }

  /** Sets one number. False where it is refused; `refusal` says why. Changes of one gesture are one step of the history. */
  set(of: MappingNumber, value: number, gesture: string | null = null): boolean {
    const [limits, { base }] = [this.#from.limits(), this];
    if (limits === null || base === null) return false;
    return this.#accept(of, setNumber(base, of, value, limits), gesture);
  }

  /** Moves one number as near to a value as the others let it. */
  drag(of: MappingNumber, value: number, gesture: string): void {
    const [limits, { base }] = [this.#from.limits(), this];
    if (limits !== null && base !== null) this.set(of, nearestNumber(base, of, value, limits), gesture);
  }

  /** Puts one number back to that of another mapping. */
  reset(of: MappingNumber, to: 'now' | 'proposed'): void {
    const mapping = to === 'now' ? this.#from.now() : this.#from.proposed();
    if (mapping !== null) this.set(of, numberOf(mapping, of));
  }

  /** Takes a whole mapping as yours, e.g. one that was kept or loaded; refused where it is another pad's, or of other counts. */
  take(mapping: StickMapping, taken: Taken): boolean {
    const limits = this.#from.limits();
    if (limits === null) return false;
    const problem = whyNotTaken(taken, this.#from.origin());
    const checked: Result<StickMapping> = problem === null ? checkByHand(mapping, limits) : { ok: false, problem };
    return this.#accept(null, checked, null, taken);
  }

  /** Has no mapping of one's own again; undo brings it back. */
  clear(): void {
    this.#put(takeStep(this.#history, null));
  }

  undo(): void {
    this.#put(undo(this.#history));
  }

  redo(): void {
    this.#put(redo(this.#history));
  }

  /** The hand has gone elsewhere: what was refused is no longer said. */
  forget(): void {
    this.#refusal = null;
  }

  /** Writes down what is not yet written: before the page goes. */
  flush(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    for (const [key, { survey, stick }] of Object.entries(this.#unwritten)) {
      const history = this.#histories[key];
      if (history !== undefined && !this.#from.overReload.keepHistory(survey, stick, history))
        this.#refusal = {
          of: null,
          problem: { code: 'yours-not-kept', says: 'This window has no room to keep yours: save it as a file.' },
        };
    }
    this.#unwritten = {};
  }

  /** `taken` is where the numbers are from; a nudge leaves that as it was. */
  #accept(of: MappingNumber | null, made: Result<StickMapping>, gesture: string | null, taken?: Taken): boolean {
    if (!made.ok) {
      this.#refusal = { of, problem: made.problem };
      return false;
    }
    const { x, y } = made.value;
    const own = { x, y, taken: taken ?? this.own?.taken ?? null };
    this.#put(takeStep(this.#history, own, gesture));
    return true;
  }

  #historyOf(stick: StickId): NudgeHistory<OwnMapping> {
    const survey = this.#from.survey();
    if (survey === null) return NO_HISTORY;
    return this.#histories[keyOf(survey, stick)] ?? this.#from.overReload.history(survey, stick);
  }

  #put(history: NudgeHistory<OwnMapping>): void {
    const [survey, stick] = [this.#from.survey(), this.#from.stick()];
    if (survey === null) return;
    const key = keyOf(survey, stick);
    this.#refusal = null;
    this.#histories = { ...this.#histories, [key]: history };
    this.#unwritten = { ...this.#unwritten, [key]: { survey, stick } };
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.flush(), QUIET);
  }
}

function keyOf(survey: string, stick: StickId): string {
  return `${survey} ${stick}`;
}
