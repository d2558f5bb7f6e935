/** A pad's state, transport and domain in the words of the screen. */
import type { EventPayload, Reply } from '../../shared/contract.ts';

export type PadSummary = Reply<'pads.list'>[number];
export type PadDetails = Reply<'pads.open'>;
export type PadHealth = EventPayload<'pad.health'>;

const TRANSPORTS = { usb: 'USB', bluetooth: 'Bluetooth', simulated: 'simulated' } as const;

export function transportWord(transport: PadSummary['identity']['transport']): string {
  return TRANSPORTS[transport];
}

const DOMAINS = {
  sensor: {
    brief: 'sensor',
    short: 'sensor counts',
    says: 'Counts come straight from the sensors, before the mapping that is stored in the pad.',
  },
  reported: {
    brief: 'reported',
    short: 'reported counts',
    says: 'Counts come after the pad’s own mapping, or it is not known whether they do: at the field’s limits the stick may go further than is seen, and a proposal is for the host only.',
  },
} as const;

export function domainWords(domain: PadDetails['domain']): {
  readonly brief: string;
  readonly short: string;
  readonly says: string;
} {
  return DOMAINS[domain];
}

/** It left; in the list it stands until it returns. */
export function isGone({ problem }: PadSummary): boolean {
  return problem?.code === 'pad-gone';
}

/** Groups of three, as on a rule: 1 000. */
export function wholeNumber(value: number): string {
  return Math.round(value)
    .toString()
    .replace('-', '−')
    .replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f');
}

export function rateText(health: PadHealth | null): string {
  if (health === null) return 'waiting for reports';
  if (health.state === 'opening') return 'opening';
  if (health.state === 'lost') return 'gone';
  if (health.state === 'closed') return 'closed';
  if (health.state === 'silent') return 'silent';
  return health.rateHz === null ? 'streaming' : `${wholeNumber(health.rateHz)} reports/s`;
}

/** E.g. "0 gaps", "2 gaps, 5 lost". */
export function gapsText(health: PadHealth | null): string {
  if (health === null) return 'no gaps yet';
  const gaps = health.gaps === 1 ? '1 gap' : `${wholeNumber(health.gaps)} gaps`;
  if (health.gaps === 0) return gaps;
  return health.lost === null ? `${gaps}, loss not known` : `${gaps}, ${wholeNumber(health.lost)} lost`;
}

/** Four upper-case hex digits, as device lists write them. */
export function hexId(id: number): string {
  return id.toString(16).toUpperCase().padStart(4, '0');
}
