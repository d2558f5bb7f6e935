/** A hand that does what the guides ask, on a stick of the tests' own, and the log that comes of it. */
import { FlickGuide } from '../../../../core/capture/guide/flick-guide.ts';
import { RestGuide } from '../../../../core/capture/guide/rest-guide.ts';
import { RimGuide } from '../../../../core/capture/guide/rim-guide.ts';
import { TravelGuide } from '../../../../core/capture/guide/travel-guide.ts';
import type { Pair } from '../../../../core/pad/stick.ts';
import type { Purpose } from '../../../../core/capture/evidence/track.ts';
import { HandScript, type StickPlan } from './hand-script.ts';

export class GuidedHand extends HandScript {
  /** Reads the log as the bench does: silence is told every 20 ms. */
  #toldUs = 0;

  begin(purpose: Purpose): this {
    return this.mark('capture', { purpose, stick: 'left', edge: 'begin' });
  }

  /** Once; a guide that is done ends its capture at once, as the bench does. */
  end(purpose: Purpose): this {
    if (this.hear === null) return this;
    this.hear = null;
    return this.mark('capture', { purpose, stick: 'left', edge: 'end' });
  }

  restGuide(plan: StickPlan, releases: number): RestGuide {
    const guide = new RestGuide({ ...this.#options(plan), releases });
    this.#listen('rest', guide);
    return guide;
  }

  rimGuide(plan: StickPlan, turns: number, rests: readonly Pair[]): RimGuide {
    const guide = new RimGuide({ ...this.#options(plan), turns, rests });
    this.#listen('rim', guide);
    return guide;
  }

  travelGuide(plan: StickPlan, sweeps: number): TravelGuide {
    const guide = new TravelGuide({ ...this.#options(plan), sweeps });
    this.#listen('travel', guide);
    return guide;
  }

  flickGuide(plan: StickPlan, flicks: number): FlickGuide {
    const guide = new FlickGuide({ ...this.#options(plan), flicks });
    this.#listen('flick', guide);
    return guide;
  }

  /** As asked: to the gate opposite, a moment there, slowly through the rest to the other gate, a moment there, and off. */
  sweep(toward: number, seconds = 3): this {
    return this.push(toward + 180, 1, 0.3)
      .stay(0.3)
      .push(toward, 1, seconds)
      .stay(0.3)
      .letGo()
      .stay(0.3);
  }

  /** Full tilt, shortly, and off all at once. */
  flick(toward: number, back = 0.03): this {
    return this.push(toward, 1, 0.15).stay(0.2).letGo({ x: 0, y: 0 }, back).stay(1);
  }

  /** Pushes as asked and lets the stick snap back, to a place a little beside its rest. */
  release(guide: RestGuide, scatter = 6): this {
    const rest = { x: scatter * (2 * this.chance() - 1), y: scatter * (2 * this.chance() - 1) };
    return this.push(guide.toward ?? 0, 0.95 + 0.05 * this.chance())
      .stay(0.25)
      .letGo(rest)
      .stay(0.9);
  }

  #options(plan: StickPlan): ConstructorParameters<typeof RimGuide>[0] {
    return {
      stick: 'left',
      fields: plan.fields,
      startUs: this.t,
      turns: 3,
      rests: [],
      mark: (t, name, detail) => this.marks.push({ t, name, detail }),
    };
  }

  #listen(purpose: Purpose, guide: Pick<RestGuide, 'reading' | 'advance' | 'isDone'>): void {
    this.#toldUs = this.t;
    this.hear = {
      reading: ({ t, x, y, down }) => {
        guide.reading(t, x, y, down);
        if (guide.isDone) this.end(purpose);
      },
      advance: (t) => {
        if (t - this.#toldUs < 20_000) return;
        this.#toldUs = t;
        guide.advance(t);
        if (guide.isDone) this.end(purpose);
      },
    };
  }
}
