/** What the report of the survey opened last says, in two words, for whoever names the Findings view. */

export class JudgedNote {
  #survey = $state<string | null>(null);
  #says = $state('');

  /** E.g. `2 faults`. */
  keep(survey: string, says: string): void {
    this.#survey = survey;
    this.#says = says;
  }

  /** Null where another survey is asked about than the one opened last. */
  of(survey: string | null): string | null {
    return survey !== null && survey === this.#survey ? this.#says : null;
  }
}

export const judgedNote = new JudgedNote();
