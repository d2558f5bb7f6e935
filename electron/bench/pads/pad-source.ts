/** A pad that can be opened, wherever it comes from, and how the bench learns of the real ones. */
import type { LayerName } from '../../../core/image/memory-map.ts';
import type { PadMapping } from '../../../core/mapping/mapping.ts';
import type { SimulatedHand } from '../../../core/simulate/simulated-hand.ts';
import type { Problem, Result } from '../../../core/result.ts';
import type { Transport } from './transport.ts';

/** What a user has to install where the system keeps a pad closed. */
export interface AccessRule {
  readonly file: string;
  readonly text: string;
  readonly then: string;
}

/** The cable of a simulated pad. */
export interface SimulatedCable {
  readonly isPluggedIn: boolean;
  /** The pad is lost as a real one would be. */
  unplug(): void;
  plugIn(): void;
}

export interface PadSource {
  readonly transport: Transport;
  /** Why it cannot be opened, or null. */
  readonly problem: Problem | null;
  readonly rule: AccessRule | null;
  /** What the pad's layers hold at this moment, where that is known without a reading; written into every log of it. */
  readonly stored?: () => Readonly<Record<LayerName, PadMapping | null>>;
  /** The hand of a simulated pad; null for a real one. */
  readonly hand: SimulatedHand | null;
  /** Missing for a real pad. */
  readonly cable?: SimulatedCable;
}

/** Tells which real pads there are. */
export interface PadWatcher {
  /** `hear` gets the whole list, at once and whenever it changes. */
  start(hear: (pads: readonly PadSource[]) => void): void;
  /** Looking for pads disturbs one that is being read: it rests while a capture runs. */
  pause(): void;
  resume(): void;
  close(): Promise<void>;
}

/** Makes a simulated pad by the name of what is wrong with it; `key` tells several of one kind apart. */
export type PlugDemo = (name: string, key: string) => Result<PadSource>;
