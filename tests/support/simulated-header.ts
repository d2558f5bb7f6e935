/** The header of a log of a simulated pad. */
import type { LogHeader } from '../../core/log/header.ts';
import type { SimulatedPad } from '../../core/simulate/simulated-pad.ts';

export function simulatedHeader(pad: SimulatedPad): LogHeader {
  return {
    kind: 'stickwright-report-log',
    version: 1,
    program: '0.0.0',
    startedAt: '2024-01-01T00:00:00.000Z',
    stage: null,
    domain: 'reported',
    pad: { ...pad.identity, unit: null },
    descriptor: Buffer.from(pad.descriptor).toString('hex'),
    profile: null,
  };
}
