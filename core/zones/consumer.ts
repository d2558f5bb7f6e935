/** A game or driver as the technician describes it, as a consumer file writes it. */
import type { Stage } from './chain.ts';

/** What a chain of a consumer is for; a consumer that has none for a control is not judged on it. */
export type ConsumerControl = 'left' | 'right' | 'trigger';

export interface Consumer {
  readonly kind: 'stickwright-consumer';
  readonly version: 1;
  readonly name: string;
  /** Whether it sees the driver's output, or the pad's own and so nothing of what the driver does. */
  readonly takes: 'pad' | 'driver';
  readonly chains: Readonly<Partial<Record<ConsumerControl, { readonly stages: readonly Stage[] }>>>;
  /** Output magnitude it must see to respond fully; null where that is not known. */
  readonly needs: number | null;
  /** The document that publishes the rule; null for one that is made up or described by the technician. */
  readonly source: string | null;
}
