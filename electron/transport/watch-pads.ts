/**
 * Notices pads that arrive and leave. The library has no events: the list is asked for every two seconds, and soon after
 * the folder of device nodes changed. Never while a capture runs: asking disturbs a pad that is being read.
 */
import type { Problem } from '../../core/result.ts';
import type { Clock } from '../bench/time/clock.ts';
import type { PadSource, PadWatcher } from '../bench/pads/pad-source.ts';
import { findPads, type FoundPad } from './find-pads.ts';
import type { HidPort } from './hid-port.ts';
import type { HidSystem } from './hid-system.ts';
import { HidTransport } from './hid-transport.ts';
import { PadKeys } from './pad-keys.ts';

const LOOK_EVERY_MILLIS = 2000;
/** A node is there before its rights are: looked at soon, and once more by the next regular look. */
const LOOK_SOON_MILLIS = 250;

/** Calls when device nodes may have come or gone; returns what ends it. */
export type NodeWatch = (hear: () => void) => () => void;

export interface PadWatchOptions {
  readonly hid: HidPort;
  readonly clock: Clock;
  readonly system: HidSystem;
  readonly nodes: NodeWatch;
  /** Told once each time that the list cannot be had for another reason than before. */
  readonly onProblem: (problem: Problem) => void;
}

export class PadWatch implements PadWatcher {
  readonly #options: PadWatchOptions;
  readonly #keys = new PadKeys();
  readonly #transports = new Map<string, HidTransport>();
  #hear: ((pads: readonly PadSource[]) => void) | null = null;
  #told: string | null = null;
  #problem: string | null = null;
  #paused = false;
  /** Something changed while a look was under way. */
  #hinted = false;
  #looking: Promise<void> | null = null;
  #cancelLook: (() => void) | null = null;
  #endNodes: (() => void) | null = null;

  constructor(options: PadWatchOptions) {
    this.#options = options;
  }

  start(hear: (pads: readonly PadSource[]) => void): void {
    this.#hear = hear;
    this.#endNodes = this.#options.nodes(() => {
      this.#hinted = true;
      this.#lookIn(LOOK_SOON_MILLIS);
    });
    this.#lookIn(0);
  }

  pause(): void {
    this.#paused = true;
    this.#cancelLook?.();
    this.#cancelLook = null;
  }

  resume(): void {
    this.#paused = false;
    this.#lookIn(0);
  }

  async close(): Promise<void> {
    this.pause();
    this.#hear = null;
    this.#endNodes?.();
    await this.#looking;
  }

  #lookIn(millis: number): void {
    if (this.#paused || this.#hear === null || this.#looking !== null) return;
    this.#cancelLook?.();
    this.#cancelLook = this.#options.clock.after(millis, () => {
      this.#cancelLook = null;
      this.#hinted = false;
      this.#looking = this.#look().finally(() => {
        this.#looking = null;
        this.#lookIn(this.#hinted ? LOOK_SOON_MILLIS : LOOK_EVERY_MILLIS);
      });
    });
  }

  async #look(): Promise<void> {
    let found: readonly FoundPad[];
    try {
      found = await findPads(this.#options.hid, this.#options.system);
    } catch (thrown) {
      this.#tellProblem(thrown);
      return;
    }
    this.#problem = null;
    const pads = this.#sources(found);
    const likeness = JSON.stringify(pads.map(({ transport, problem }) => [transport.key, problem, transport.lockKey]));
    if (likeness === this.#told) return;
    this.#told = likeness;
    this.#hear?.(pads);
  }

  #sources(found: readonly FoundPad[]): readonly (PadSource & { readonly transport: HidTransport })[] {
    const keys = this.#keys.assign(found);
    const sources = found.map((pad, index) => ({
      transport: this.#transport(pad, keys[index] ?? pad.likeness),
      problem: pad.problem,
      rule: pad.rule,
      hand: null,
    }));
    const present = new Set(sources.map(({ transport }) => transport.lockKey));
    for (const path of this.#transports.keys()) if (!present.has(path)) this.#transports.delete(path);
    return sources;
  }

  /** The one that is open stays the one that is listed, as long as the pad stays on its path. */
  #transport(pad: FoundPad, key: string): HidTransport {
    const known = this.#transports.get(pad.path);
    if (known?.key === key) return known;
    const { hid, clock, system } = this.#options;
    const transport = new HidTransport({ ...pad, key }, { hid, clock, platform: system.platform });
    this.#transports.set(pad.path, transport);
    return transport;
  }

  #tellProblem(thrown: unknown): void {
    const words = thrown instanceof Error ? thrown.message : String(thrown);
    if (words === this.#problem) return;
    this.#problem = words;
    this.#options.onProblem({
      code: 'pads-not-listed',
      says: `The system does not list its HID devices ("${words}"); it is asked again every two seconds.`,
    });
  }
}
