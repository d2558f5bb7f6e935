/** A hand that does what the guides ask, on a stick of the tests' own, and the log that comes of it. */
import { RestGuide } from '../../../core/capture/rest-guide.ts';
import { RimGuide } from '../../../core/capture/rim-guide.ts';
import { HandScript, type StickPlan } from './hand-script.ts';

export class GuidedHand extends HandScript {
  /** Reads the log as the bench does: silence is told every 20 ms. */
  #toldUs = 0;

  begin(purpose: 'rest' | 'rim'): this {
    return this.mark('capture', { purpose, stick: 'left', edge: 'begin' });
  }

  /** Once; a guide that is done ends its capture at once, as the bench does. */
  end(purpose: 'rest' | 'rim'): this {
    if (this.hear === null) return this;
    this.hear = null;
    return this.mark('capture', { purpose, stick: 'left', edge: 'end' });
  }

  restGuide(plan: StickPlan, releases: number): RestGuide {
    const guide = new RestGuide({ ...this.#options(plan), releases });
    this.#listen('rest', guide);
    return guide;
  }

  rimGuide(plan: StickPlan, turns: number, rests: RestGuide['rests']): RimGuide {
    const guide = new RimGuide({ ...this.#options(plan), turns, rests });
    this.#listen('rim', guide);
    return guide;
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

  #listen(purpose: 'rest' | 'rim', guide: Pick<RestGuide, 'reading' | 'advance' | 'isDone'>): void {
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
