/** Leads a hand through releases, or presses, under one disturbance; live, hands-free. */
import type { Pair } from '../../pad/stick.ts';
import type { GuideOptions } from './capture-guide.ts';
import { ClickGuide } from './click-guide.ts';
import { arrangeWords, type Disturbance } from '../evidence/disturbance.ts';
import { RestGuide } from './rest-guide.ts';

/** The other stick is at full tilt from this share of the half range on. */
const OTHER_TILT = 0.4;

interface DisturbanceOptions extends GuideOptions {
  readonly of: Disturbance;
  /** Dwells asked for. */
  readonly dwells: number;
}

/** What goes on beside the stick while it is read. */
export interface Beside {
  readonly buttonDown: boolean;
  /** The stick's own click; where the pad does not tell it, any button. */
  readonly clickDown: boolean;
  /** Tilt of the other stick in shares of the half range; null where there is none. */
  readonly otherTilt: number | null;
}

/** With the click held it takes dwells of presses, else of releases; the other stick's tilt is watched. */
export class DisturbanceGuide {
  readonly #options: DisturbanceOptions;
  readonly #rest: RestGuide;
  readonly #click: ClickGuide | null;
  #isArranged = true;

  constructor(options: DisturbanceOptions) {
    this.#options = options;
    this.#click = options.of === 'click' ? new ClickGuide(options) : null;
    // Both guides mark what they ask for: only the one that is used may.
    const mark = this.#click === null ? options.mark : () => undefined;
    this.#rest = new RestGuide({ ...options, releases: options.dwells, mark });
  }

  get phase(): RestGuide['phase'] {
    return this.#click?.phase ?? this.#rest.phase;
  }

  get prompt(): string {
    if (this.#click !== null) return this.#click.prompt;
    if (this.#rest.isDone || this.#isArranged) return this.#rest.prompt;
    return arrangeWords(this.#options.of, this.#options.stick);
  }

  get toward(): number | null {
    return this.#click === null ? this.#rest.toward : null;
  }

  get taken(): number {
    return this.#click?.taken ?? this.#rest.rests.length;
  }

  get asked(): number {
    return this.#click?.asked ?? this.#rest.asked;
  }

  get isDone(): boolean {
    return this.#click?.isDone ?? this.#rest.isDone;
  }

  reading(t: number, place: Pair, beside: Beside): void {
    if (this.#click !== null) this.#click.reading(t, place, beside.clickDown);
    else {
      this.#isArranged = this.#options.of !== 'other-stick' || (beside.otherTilt ?? 1) >= OTHER_TILT;
      // What is not arranged is no release under the disturbance: it is passed over like one with a button down.
      this.#rest.reading(t, place.x, place.y, beside.buttonDown || !this.#isArranged);
    }
  }

  advance(t: number): void {
    (this.#click ?? this.#rest).advance(t);
  }

  gap(): void {
    (this.#click ?? this.#rest).gap();
  }

  repeat(t: number): void {
    (this.#click ?? this.#rest).repeat(t);
  }
}
