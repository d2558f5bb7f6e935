/** Writes the lines of a report log, each with its newline. Times are whole microseconds. */
import { toHex } from '../hid/hex.ts';
import type { LogHeader } from './header.ts';

export function formatHeader(header: LogHeader): string {
  return `${JSON.stringify(header)}\n`;
}

/** An input report; the id is 0 where the pad has none, and never among the bytes. */
export function formatReport(t: number, reportId: number, bytes: Uint8Array): string {
  return `["r",${t},${reportId},"${toHex(bytes)}"]\n`;
}

/** An output report that was sent to the pad. */
export function formatSent(t: number, reportId: number, bytes: Uint8Array): string {
  return `["o",${t},${reportId},"${toHex(bytes)}"]\n`;
}

/** A feature report that the pad answered with. */
export function formatFeature(t: number, reportId: number, bytes: Uint8Array): string {
  return `["f",${t},${reportId},"${toHex(bytes)}"]\n`;
}

/** Reports that are known to be missing; `lost` is null where their number is not known. */
export function formatGap(t: number, lost: number | null): string {
  return `["g",${t},${lost ?? 'null'}]\n`;
}

export function formatMark(t: number, name: string, detail: Readonly<Record<string, unknown>>): string {
  return `["m",${t},${JSON.stringify(name)},${JSON.stringify(detail)}]\n`;
}
