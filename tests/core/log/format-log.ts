/** Entries of any kind and the lines they make, for tests that write a log and read it again. */
import fc from 'fast-check';
import {
  formatFeature,
  formatGap,
  formatHeader,
  formatMark,
  formatReport,
  formatSent,
} from '../../../core/log/format.ts';
import type { LogHeader } from '../../../core/log/header.ts';
import type { LogVisitor, Mark } from '../../../core/log/visitor.ts';

export type Seen =
  | { readonly is: 'report' | 'sent' | 'feature'; readonly t: number; readonly id: number; readonly bytes: number[] }
  | { readonly is: 'gap'; readonly t: number; readonly lost: number | null }
  | { readonly is: 'mark'; readonly t: number; readonly name: string; readonly detail: Mark['detail'] };

/** Keeps copies of everything it is handed, in order. */
export class Witness implements LogVisitor {
  readonly headers: LogHeader[] = [];
  readonly seen: Seen[] = [];

  header(header: LogHeader): void {
    this.headers.push(header);
  }

  report(t: number, id: number, bytes: Uint8Array): void {
    this.seen.push({ is: 'report', t, id, bytes: [...bytes] });
  }

  sent(t: number, id: number, bytes: Uint8Array): void {
    this.seen.push({ is: 'sent', t, id, bytes: [...bytes] });
  }

  featureReply(t: number, id: number, bytes: Uint8Array): void {
    this.seen.push({ is: 'feature', t, id, bytes: [...bytes] });
  }

  gap(t: number, lost: number | null): void {
    this.seen.push({ is: 'gap', t, lost });
  }

  mark(mark: Mark): void {
    this.seen.push({ is: 'mark', t: mark.t, name: mark.name, detail: mark.detail });
  }
}

export function lineOf(entry: Seen): string {
  switch (entry.is) {
    case 'report':
      return formatReport(entry.t, entry.id, Uint8Array.from(entry.bytes));
    case 'sent':
      return formatSent(entry.t, entry.id, Uint8Array.from(entry.bytes));
    case 'feature':
      return formatFeature(entry.t, entry.id, Uint8Array.from(entry.bytes));
    case 'gap':
      return formatGap(entry.t, entry.lost);
    case 'mark':
      return formatMark(entry.t, entry.name, entry.detail);
  }
}

export function header(changes: Partial<LogHeader> = {}): LogHeader {
  return {
    kind: 'stickwright-report-log',
    version: 1,
    program: '0.1.0',
    startedAt: '2025-03-04T05:06:07.000Z',
    stage: 'fitted',
    domain: 'reported',
    pad: { vendorId: 0x1209, productId: 1, product: 'Prüfling № 7 🎛', serial: null, transport: 'usb', unit: null },
    descriptor: '05010905',
    profile: null,
    ...changes,
  };
}

export function bytesOf(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(text, 'utf8'));
}

const body = fc.array(fc.integer({ min: 0, max: 255 }), { maxLength: 80 });
const id = fc.integer({ min: 0, max: 255 });
const detail = fc.dictionary(fc.string(), fc.jsonValue({ maxDepth: 2 }), { maxKeys: 3 });

/** Entries in order of time, of every kind the format knows. */
export const entries: fc.Arbitrary<Seen[]> = fc
  .array(
    fc.tuple(
      fc.integer({ min: 0, max: 3_000_000 }),
      fc.oneof(
        fc.record({ is: fc.constantFrom('report', 'sent', 'feature'), id, bytes: body }),
        fc.record({ is: fc.constant('gap'), lost: fc.option(fc.integer({ min: 0, max: 10_000 })) }),
        fc.record({ is: fc.constant('mark'), name: fc.string(), detail }),
      ),
    ),
    { maxLength: 30 },
  )
  .map((steps) => {
    let t = 0;
    return steps.map(([later, rest]) => ({ ...rest, t: (t += later) }));
  });

export function logText(all: readonly Seen[], first: LogHeader = header()): string {
  return formatHeader(first) + all.map(lineOf).join('');
}
