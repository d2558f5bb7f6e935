/** A small report log of a pad with one stick, as text. */
import { formatHeader, formatReport } from '../../../core/log/format.ts';

/** Joystick, X and Y of 8 bits each, no report id. */
export const ONE_STICK = '05010904a1010930093115002 6ff00750895028102c0'.replaceAll(' ', '');

export function smallLog(reports = 50): string {
  const header = formatHeader({
    kind: 'stickwright-report-log',
    version: 1,
    program: '0.0.0',
    startedAt: '2024-05-01T10:00:00.000Z',
    stage: 'received',
    domain: 'reported',
    pad: { vendorId: 0x1209, productId: 0x0001, product: 'Test pad', serial: null, transport: 'usb', unit: null },
    descriptor: ONE_STICK,
    profile: null,
  });
  const lines = Array.from({ length: reports }, (_, index) => formatReport(1000 * index, 0, Uint8Array.of(128, 127)));
  return header + lines.join('');
}
