/** What the gate of one stick in one survey may be known from, and the choice of it. Owns state, renders nothing. */
import type { GateSource } from '../../core/findings/outline/known-gate.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { Problem } from '../../core/result.ts';
import type { BenchApi } from '../../shared/bench-api.ts';

/** As the judged survey says; null where nothing is known of the gate. */
export type GateInForce = { readonly survey: string; readonly from: GateSource } | null;

export interface GateSources {
  readonly bench: BenchApi;
  readonly survey: string;
  readonly stick: StickId;
  inForce(): GateInForce;
}

interface Picked {
  readonly from: GateSource | null;
  readonly survey: string | null;
  /** What was in force then: once the survey is judged anew, that counts and no longer what was picked. */
  readonly before: GateInForce;
}

export class GateState {
  readonly #from: GateSources;
  #picked = $state.raw<Picked | null>(null);
  #problem = $state.raw<Problem | null>(null);
  #offered = $state.raw<readonly string[] | null>(null);
  #choosing = $state(false);
  #asked = 0;

  constructor(from: GateSources) {
    this.#from = from;
  }

  /** Surveys that tell of the gate; null until that is known. */
  get offered(): readonly string[] | null {
    return this.#offered;
  }

  get problem(): Problem | null {
    return this.#problem;
  }

  /** The bench looks into the survey that was chosen. */
  get choosing(): boolean {
    return this.#choosing;
  }

  /** What the survey that tells of the gate is of; null where the gate is unknown. */
  get from(): GateSource | null {
    return this.#shown?.from ?? null;
  }

  /** The survey that tells of the gate; null while none is chosen. */
  get survey(): string | null {
    return this.#shown?.survey ?? null;
  }

  /** Asks which of the listed surveys tell of the gate; the newest call wins. */
  async look(listed: readonly { readonly survey: string }[]): Promise<void> {
    const asked = (this.#asked += 1);
    const { bench, survey, stick } = this.#from;
    if (listed.every((one) => one.survey === survey)) {
      this.#offered = [];
      return;
    }
    const reply = await bench.call('gates.offered', { survey, stick });
    if (asked !== this.#asked) return;
    this.#offered = reply.ok ? reply.value : [];
    if (!reply.ok) this.#problem = reply.problem;
  }

  /** Null is an unknown gate. Without a survey nothing is known yet: the choice waits for one. */
  pickSource(from: GateSource | null): Promise<void> {
    return this.#pick(from, from === null ? null : this.survey);
  }

  pickSurvey(survey: string | null): Promise<void> {
    return this.#pick(this.from, survey);
  }

  get #shown(): { readonly from: GateSource | null; readonly survey: string | null } | null {
    const inForce = this.#from.inForce();
    return this.#picked !== null && this.#picked.before === inForce ? this.#picked : inForce;
  }

  async #pick(from: GateSource | null, told: string | null): Promise<void> {
    const { bench, survey, stick } = this.#from;
    const before = this.#from.inForce();
    this.#problem = null;
    this.#picked = { from, survey: told, before };
    const choice = from === null || told === null ? null : { from, survey: told };
    // What is on its way is taken back too, even if nothing was in force before.
    if (choice === null && before === null && !this.#choosing) return;
    const picked = this.#picked;
    this.#choosing = true;
    const reply = await bench.call('gates.choose', { survey, stick, choice });
    // Whoever picked again meanwhile is told of that alone.
    if (this.#picked !== picked) return;
    this.#choosing = false;
    if (reply.ok) return;
    this.#problem = reply.problem;
    this.#picked = before === null ? { from, survey: null, before } : null;
  }
}
