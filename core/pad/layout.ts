/** Which control of which report is which part of a pad. */
import type { Control } from '../hid/control.ts';
import type { Domain, StickFields, StickId } from './stick.ts';

/** Where a value of the reading comes from: a report and the index of its control in that report's plan. */
export interface FieldSource {
  readonly reportId: number;
  readonly control: Control;
}

/** How a pad's reports become readings. */
export interface PadLayout {
  /** Id of the profile that made it, or null when it was found from usages alone. */
  readonly profile: string | null;
  readonly domain: Domain;
  readonly sticks: Readonly<Partial<Record<StickId, StickFields>>>;
  readonly stickSources: Readonly<Partial<Record<StickId, { readonly x: FieldSource; readonly y: FieldSource }>>>;
  readonly triggers: Readonly<Partial<Record<StickId, FieldSource>>>;
  readonly hat: FieldSource | null;
  /** A direction pad of four switches, where there is one and no hat. */
  readonly dPad?: Readonly<Record<'up' | 'right' | 'down' | 'left', FieldSource>> | undefined;
  /** Buttons in order of usage on page 9 (1 … 128). */
  readonly buttons: readonly { readonly usage: number; readonly source: FieldSource }[];
  /** Slots of arrays that name the buttons that are down; their buttons are listed in `buttons` as well. */
  readonly buttonSlots?: readonly FieldSource[] | undefined;
  /** The button that is pressed by clicking a stick in, where a profile knows it. */
  readonly clicks: Readonly<Partial<Record<StickId, number>>>;
  /** One plain sentence where no stick was found: why, e.g. that the report names no axes. */
  readonly noSticks: string | null;
}

/** A caller-owned slot that one reading is decoded into; NaN where the pad has no such control or it is in its null state. */
export interface ReadingSlot {
  /** leftX, leftY, rightX, rightY in raw counts as reported. */
  readonly axes: Float64Array;
  /** left, right in raw counts. */
  readonly triggers: Float64Array;
  /** Index 0: degrees clockwise from up (HID's habit), NaN at rest. */
  readonly hat: Float64Array;
  /** Bit n−1 of the 128 bits is button n of page 9. */
  readonly buttons: Uint32Array;
}
