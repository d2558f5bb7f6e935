/** What the program knows of one family of pads; data, matched by vendor and product number, without brand or model names. */
import type { StickId } from './stick.ts';

/** One bit field of a vendor-defined report. Two 12-bit values packed in three bytes are bits 0 … 11 and 12 … 23. */
export interface ProfileField {
  readonly bitOffset: number;
  readonly bitSize: number;
  readonly minimum: number;
  readonly maximum: number;
  /** +1 where right or up makes the count grow. */
  readonly up: 1 | -1;
}

/** A direction pad: `minimum` is up, further codes go clockwise in equal steps, any other code is no direction. */
export interface ProfileHat {
  readonly bitOffset: number;
  readonly bitSize: number;
  readonly minimum: number;
  readonly maximum: number;
}

/** One step of the exchange that switches full reports on. */
export interface StartStep {
  readonly kind: 'output' | 'feature';
  /** The only connection on which the step is sent; on every one where it is left out. */
  readonly only?: 'usb' | 'bluetooth' | undefined;
  readonly reportId: number;
  /** Payload without the report id. A byte written `nn` counts up from 0 with each step sent. */
  readonly hex: string;
  /** What must come back before the next step: an input report whose payload holds these bytes at the offset; null for none. */
  readonly reply: { readonly reportId: number; readonly offset: number; readonly hex: string } | null;
  readonly timeoutMillis: number;
}

export interface Profile {
  readonly id: string;
  readonly pads: readonly { readonly vendorId: number; readonly productId: number }[];
  /** The input report that carries the full reading, and the least length of its payload in bytes. */
  readonly report: { readonly reportId: number; readonly byteLength: number };
  readonly domain: 'sensor' | 'reported';
  readonly sticks: Readonly<Partial<Record<StickId, { readonly x: ProfileField; readonly y: ProfileField }>>>;
  readonly triggers: Readonly<Partial<Record<StickId, ProfileField>>>;
  readonly hat?: ProfileHat | undefined;
  /** Bit offset of each button, by its number. */
  readonly buttons: readonly { readonly usage: number; readonly bitOffset: number }[];
  readonly clicks: Readonly<Partial<Record<StickId, number>>>;
  readonly start: readonly StartStep[];
}
