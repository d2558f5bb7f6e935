/** What reads a pad's reports, made anew whenever an id comes that did not come before. */

/** A pad may describe sticks in a report that it never sends: which reports carry them shows only once they have come. */
export class ByArrival<Reader> {
  readonly #make: (arriving: ReadonlySet<number> | null) => Reader;
  readonly #arriving = new Set<number>();
  #now: Reader;

  /** `make` is given the ids of the reports that came so far; null before the first. */
  constructor(make: (arriving: ReadonlySet<number> | null) => Reader) {
    this.#make = make;
    this.#now = make(null);
  }

  /** As known so far; settled once every report that the pad sends has come. */
  get now(): Reader {
    return this.#now;
  }

  /** What reads the report of this id that has come. */
  at(reportId: number): Reader {
    if (this.#arriving.has(reportId)) return this.#now;
    this.#arriving.add(reportId);
    this.#now = this.#make(this.#arriving);
    return this.#now;
  }
}
