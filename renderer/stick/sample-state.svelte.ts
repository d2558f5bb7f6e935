/** The selected sample: one reading of the log, by its time. Owns state, renders nothing. */
import type { Pair, StickId } from '../../core/pad/stick.ts';
import type { BenchApi } from '../../shared/bench-api.ts';

/** A reading and the microseconds of the log at which it came. */
export interface Sample {
  readonly atUs: number;
  /** Raw counts as reported. */
  readonly counts: Pair;
}

/** No pad that is surveyed reports more seldom. */
const AROUND_US = 150_000;
/** So fine that every reading stands by itself. */
const SLICES = 2000;

export class SampleState {
  #now = $state.raw<Sample | null>(null);
  #asked = 0;
  readonly #bench: BenchApi;

  constructor(bench: BenchApi) {
    this.#bench = bench;
  }

  /** Null without a selected sample, while it is read, and where the log has no reading near it. */
  get now(): Sample | null {
    return this.#now;
  }

  /** Reads the sample nearest to a time of the log; the newest call wins. */
  async read(survey: string | null, stick: StickId, atUs: number | null): Promise<void> {
    const asked = (this.#asked += 1);
    this.#now = null;
    if (survey === null || atUs === null) return;
    const [fromUs, toUs] = [Math.max(0, atUs - AROUND_US), atUs + AROUND_US];
    const reply = await this.#bench.call('surveys.strip', { survey, stick, fromUs, toUs, slices: SLICES });
    if (asked !== this.#asked || !reply.ok) return;
    const [x, y] = [nearest(reply.value.x, atUs), nearest(reply.value.y, atUs)];
    this.#now = x === null || y === null ? null : { atUs: x.atUs, counts: { x: x.value, y: y.value } };
  }
}

/** Of times and values in turn the pair whose time is nearest; null where there is none. */
export function nearest(points: readonly number[], atUs: number): { atUs: number; value: number } | null {
  let best: { atUs: number; value: number } | null = null;
  for (let i = 0; i + 1 < points.length; i += 2) {
    const [time = 0, value = 0] = [points[i], points[i + 1]];
    if (best === null || Math.abs(time - atUs) < Math.abs(best.atUs - atUs)) best = { atUs: time, value };
  }
  return best;
}
