/** The one selection: stick, direction, survey, finding, and the view that shows it. Every view reads it; it stands in the address. */
import type { StickId } from '../../core/pad/stick.ts';
import { formatAddress, NOTHING_SELECTED, parseAddress, toDirection, type Selected, type ViewName } from './address.ts';

/** What the selection needs of the window. */
export interface AddressPlace {
  readonly location: { readonly hash: string };
  readonly history: {
    pushState(state: null, unused: string, address: string): void;
    replaceState(state: null, unused: string, address: string): void;
  };
  addEventListener(event: 'hashchange' | 'popstate', hear: () => void): void;
  removeEventListener(event: 'hashchange' | 'popstate', hear: () => void): void;
}

export class Selection {
  #selected = $state.raw<Selected>(NOTHING_SELECTED);
  #place: AddressPlace | null = null;

  /** Takes the selection from the address and keeps the two equal from then on. Returns the function that ends it. */
  followAddress(place: AddressPlace): () => void {
    const read = (): void => {
      this.#selected = parseAddress(place.location.hash) ?? this.#selected;
    };
    read();
    this.#place = place;
    this.#write(this.#selected, 'replace');
    place.addEventListener('hashchange', read);
    place.addEventListener('popstate', read);
    return () => {
      this.#place = null;
      place.removeEventListener('hashchange', read);
      place.removeEventListener('popstate', read);
    };
  }

  get view(): ViewName {
    return this.#selected.view;
  }

  /** The full-screen detail of a view, e.g. the fitting aid of Pad. */
  get detail(): Selected['detail'] {
    return this.#selected.detail;
  }

  /** Opens a view; the browser's own Back returns. */
  open(view: ViewName, detail: Selected['detail'] = null): void {
    this.#write({ ...this.#selected, view, detail }, 'push');
  }

  get stick(): StickId {
    return this.#selected.stick;
  }

  set stick(stick: StickId) {
    if (stick !== this.stick) this.#write({ ...this.#selected, stick, finding: null }, 'replace');
  }

  /** A direction in degrees counter-clockwise from +x, or null. Any angle may be set: the nearest is taken. */
  get direction(): number | null {
    return this.#selected.direction;
  }

  set direction(angle: number | null) {
    const direction = toDirection(angle);
    // Pointing along a chart sets the same direction many times.
    if (direction !== this.#selected.direction) this.#write({ ...this.#selected, direction }, 'replace');
  }

  /** Handle of the survey that is shown, or null. */
  get survey(): string | null {
    return this.#selected.survey;
  }

  set survey(survey: string | null) {
    if (survey === this.survey) return;
    const against = survey === this.against ? null : this.against;
    this.#write({ ...this.#selected, survey, against, finding: null, sample: null }, 'replace');
  }

  /** Handle of the survey that the shown one is compared with, or null; never the shown one itself. */
  get against(): string | null {
    const { against, survey } = this.#selected;
    return against === survey ? null : against;
  }

  set against(against: string | null) {
    if (against !== this.against) this.#write({ ...this.#selected, against }, 'replace');
  }

  /** Key of the finding whose evidence is marked, or null. Another stick or survey has others: it is then null. */
  get finding(): string | null {
    return this.#selected.finding;
  }

  set finding(finding: string | null) {
    this.#write({ ...this.#selected, finding }, 'replace');
  }

  /** SHA-256 of the memory image that is shown, or null. */
  get image(): string | null {
    return this.#selected.image;
  }

  set image(image: string | null) {
    if (image !== this.image) this.#write({ ...this.#selected, image }, 'replace');
  }

  /** Place of the selected stage in the chain, or null. */
  get stage(): number | null {
    return this.#selected.stage;
  }

  set stage(stage: number | null) {
    if (stage !== this.stage) this.#write({ ...this.#selected, stage }, 'replace');
  }

  /** Microseconds of the survey's log at which the selected sample stands, or null; another survey has others. */
  get sample(): number | null {
    return this.#selected.sample;
  }

  set sample(sample: number | null) {
    const whole = sample === null ? null : Math.max(0, Math.round(sample));
    if (whole !== this.sample) this.#write({ ...this.#selected, sample: whole }, 'replace');
  }

  /** The address of a view with what is selected, but for what is given: for links. */
  addressOf(part: Partial<Selected>): string {
    return formatAddress({ ...this.#selected, detail: null, ...part });
  }

  #write(next: Selected, how: 'push' | 'replace'): void {
    this.#selected = next;
    const place = this.#place;
    if (place === null) return;
    const address = formatAddress(next);
    if (address === place.location.hash) return;
    if (how === 'push') place.history.pushState(null, '', address);
    else place.history.replaceState(null, '', address);
  }
}

export const selection = new Selection();
