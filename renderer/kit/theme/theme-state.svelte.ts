/** Light, dark or as the system has it; the choice is the settings' own, what is shown follows the system where asked. */

export type ThemeChoice = 'system' | 'light' | 'dark';
export type ThemeShown = 'light' | 'dark';

/** What the theme needs of the window. */
export interface ThemePlace {
  matchMedia(query: string): {
    readonly matches: boolean;
    addEventListener(event: 'change', hear: () => void): void;
  };
  readonly document: { readonly documentElement: { readonly dataset: DOMStringMap } };
}

export class Theme {
  #choice = $state<ThemeChoice>('system');
  #systemDark = $state(false);
  #place: ThemePlace | null = null;

  /** What is on screen now. Drawings on canvas read it, so that they are drawn again when it changes. */
  get shown(): ThemeShown {
    if (this.#choice === 'system') return this.#systemDark ? 'dark' : 'light';
    return this.#choice;
  }

  get choice(): ThemeChoice {
    return this.#choice;
  }

  set choice(choice: ThemeChoice) {
    this.#choice = choice;
    this.#apply();
  }

  follow(place: ThemePlace): void {
    this.#place = place;
    const query = place.matchMedia('(prefers-color-scheme: dark)');
    this.#systemDark = query.matches;
    query.addEventListener('change', () => {
      this.#systemDark = query.matches;
      this.#apply();
    });
    this.#apply();
  }

  #apply(): void {
    if (this.#place !== null) this.#place.document.documentElement.dataset['theme'] = this.shown;
  }
}

export const theme = new Theme();
