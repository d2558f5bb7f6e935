/** Preferences: one file, one format and one place in every shell. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { done, failed, type Problem, type Result } from '../../core/result.ts';
import { chainOf } from '../../core/zones/one-zone.ts';
import { settingsSchema } from '../../shared/schemas.ts';
import type { Settings, SettingsPort } from '../bench/calls/settings-port.ts';
import { setAsideProblem, writeWholeAtOnce } from './atomic-file.ts';
import { oneChain } from './one-chain.ts';
import { makeFolderAtOnce } from './own-folder.ts';
import { setAside } from './set-aside.ts';
import { storageProblem } from './storage-problem.ts';

export const defaultSettings: Settings = {
  theme: 'system',
  sound: true,
  speech: false,
  confirmButton: null,
  limits: {},
  mappings: [],
  chain: chainOf({ shape: 'scaledRadial', inner: 0.1, outer: 1 }),
  driver: null,
  consumers: [],
};

const NAME = 'settings.json';

/** Writes the file whole or not at all. */
type Write = (file: string, content: string) => Result<void>;

export class KeptSettings implements SettingsPort {
  readonly #folder: string;
  readonly #file: string;
  readonly #write: Write;
  readonly #now: () => Date;
  #last: Settings = defaultSettings;
  #problem: Problem | null = null;

  constructor(folder: string, now: () => Date, write: Write = writeWholeAtOnce) {
    this.#folder = folder;
    this.#file = path.join(folder, NAME);
    this.#now = now;
    this.#write = write;
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
    // What cannot be read, nor put out of the way, may hold what the user wrote: it is not written over.
    if (content === null && existsSync(this.#file) && this.#problem !== null)
      return { ok: false, problem: this.#problem };
    const wished = settingsSchema.safeParse({ ...(content?.settings ?? this.#last), ...part });
    if (!wished.success) return failed('settings-invalid', 'These settings are not possible; choose others.');
    this.#last = wished.data;
    const written = this.#keep({ ...content?.raw, ...wished.data });
    if (!written.ok) this.#problem = written.problem;
    return written.ok ? done(wished.data) : written;
  }

  /** Keys that this version does not know stay as they are. */
  #keep(content: object): Result<void> {
    try {
      makeFolderAtOnce(this.#folder);
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', this.#file) };
    }
    return this.#write(this.#file, `${JSON.stringify(content, null, 2)}\n`);
  }

  /** The file's content; null where there is none that can be used. One that cannot be understood is set aside. */
  #content(): { readonly raw: object; readonly settings: Settings } | null {
    try {
      const content = parseSettings(readFileSync(this.#file, 'utf8'));
      if (content !== null) return content;
      this.#problem = setAsideProblem(this.#file, setAside(this.#file, this.#now()));
    } catch (thrown) {
      const problem = storageProblem(thrown, 'read', this.#file);
      if (problem.code !== 'file-missing') this.#problem = problem;
    }
    return null;
  }
}

/** The settings for a program that only looks at them: nothing is moved or written. `problem` where they cannot be used. */
export function lookAtSettings(folder: string): { readonly settings: Settings; readonly problem: Problem | null } {
  const file = path.join(folder, NAME);
  try {
    const content = parseSettings(readFileSync(file, 'utf8'));
    if (content !== null) return { settings: content.settings, problem: null };
    const says = `${file} cannot be understood; what it sets is not used until it is mended.`;
    return { settings: defaultSettings, problem: { code: 'settings-unreadable', says } };
  } catch (thrown) {
    const problem = storageProblem(thrown, 'read', file);
    return { settings: defaultSettings, problem: problem.code === 'file-missing' ? null : problem };
  }
}

/** Null where the text is no settings; what is missing is as by default. */
function parseSettings(text: string): { readonly raw: object; readonly settings: Settings } | null {
  const raw = parseObject(text);
  const settings = raw === null ? null : settingsSchema.safeParse({ ...defaultSettings, ...raw });
  return raw !== null && settings?.success === true ? { raw, settings: settings.data } : null;
}

function parseObject(text: string): object | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? oneChain(value) : null;
  } catch {
    return null;
  }
}
