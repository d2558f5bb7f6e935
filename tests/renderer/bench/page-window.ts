/** As much of a window as the page's way to the bench looks at: an address, its history, the storage of one tab. */
export class PageWindow {
  readonly sessionStorage: Storage;
  readonly replaced: string[] = [];
  location: URL;
  readonly history: { readonly state: unknown; replaceState: (state: unknown, title: string, address: string) => void };

  constructor(address: string, storage = new Map<string, string>()) {
    this.location = new URL(address);
    this.sessionStorage = {
      getItem: (key: string) => storage.get(key) ?? null,
      setItem: (key: string, value: string) => void storage.set(key, value),
      removeItem: (key: string) => void storage.delete(key),
    } as Storage;
    this.history = {
      state: null,
      replaceState: (_state, _title, to) => {
        this.location = new URL(to, this.location);
        this.replaced.push(this.location.href);
      },
    };
  }

  get asWindow(): Window {
    return this as unknown as Window;
  }
}
