/** Preferences: one file, one format and one place in every shell, whichever library keeps it. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import Conf from 'conf';
import { done, failed, type Problem, type Result } from '../../core/result.ts';
import { settingsSchema } from '../../shared/schemas.ts';
import type { Settings, SettingsPort } from '../bench/settings-port.ts';
import { setAsideProblem } from './atomic-file.ts';
import { setAside } from './set-aside.ts';
import { storageProblem } from './storage-problem.ts';

/** What `conf` and its child for Electron have in common: setting it writes the file whole or not at all. */
export interface PreferenceFile {
  store: Record<string, unknown>;
}

/** Opens NAME.json in a folder, making the folder where it is not there. May throw. */
export type OpenPreferences = (folder: string, name: string) => PreferenceFile;

/** For the shells outside of Electron. */
export const openConf: OpenPreferences = (folder, name) => new Conf({ cwd: folder, configName: name });

export const defaultSettings: Settings = {
  theme: 'system',
  sound: true,
  speech: false,
  confirmButton: null,
  zone: { shape: 'scaledRadial', inner: 0.1, outer: 1 },
  window: { width: 1280, height: 860 },
  limits: {},
  mappings: [],
  chain: null,
  driver: null,
  consumers: [],
};

const NAME = 'settings';

export class KeptSettings implements SettingsPort {
  readonly #folder: string;
  readonly #file: string;
  readonly #open: OpenPreferences;
  readonly #now: () => Date;
  #last: Settings = defaultSettings;
  #problem: Problem | null = null;

  constructor(folder: string, open: OpenPreferences, now: () => Date) {
    this.#folder = folder;
    this.#file = path.join(folder, `${NAME}.json`);
    this.#open = open;
    this.#now = now;
  }

  /** What the user has to be told of the file: it was set aside, or it cannot be read or kept. Null where all is well. */
  get problem(): Problem | null {
    return this.#problem;
  }

  /** As the file has them now, since another shell may have written it; what is missing there is as by default. */
  read(): Settings {
    const content = this.#content();
    if (content !== null) this.#last = content.settings;
    return this.#last;
  }

  write(part: Partial<Settings>): Result<Settings> {
    const content = this.#content();
    const wished = settingsSchema.safeParse({ ...(content?.settings ?? this.#last), ...part });
    if (!wished.success) return failed('settings-invalid', 'These settings are not possible; choose others.');
    this.#last = wished.data;
    try {
      // Keys that this version does not know stay as they are.
      this.#open(this.#folder, NAME).store = { ...content?.raw, ...wished.data };
      return done(wished.data);
    } catch (thrown) {
      this.#problem = storageProblem(thrown, 'write', this.#file);
      return { ok: false, problem: this.#problem };
    }
  }

  /** The file's content; null where there is none that can be used. One that cannot be understood is set aside. */
  #content(): { readonly raw: object; readonly settings: Settings } | null {
    try {
      const text = readFileSync(this.#file, 'utf8');
      const raw = parseObject(text);
      const settings = raw === null ? null : settingsSchema.safeParse({ ...defaultSettings, ...raw });
      if (raw !== null && settings?.success === true) return { raw, settings: settings.data };
      this.#problem = setAsideProblem(this.#file, setAside(this.#file, this.#now()));
    } catch (thrown) {
      const problem = storageProblem(thrown, 'read', this.#file);
      if (problem.code !== 'file-missing') this.#problem = problem;
    }
    return null;
  }
}

function parseObject(text: string): object | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : null;
  } catch {
    return null;
  }
}
