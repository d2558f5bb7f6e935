/** The header of the log of a drawn pad. */
import { demoPads, demoProfile } from '../../../core/pad/demo-profile.ts';
import type { LogHeader } from '../../../core/log/header.ts';
import { gamePadDescriptor, vendorDescriptor } from './descriptor.ts';
import type { Unit } from './unit.ts';

export function headerOf({ plan, seed }: Unit): LogHeader {
  const isSensor = plan.domain === 'sensor';
  const descriptor = isSensor ? vendorDescriptor(demoProfile.report.byteLength) : gamePadDescriptor(plan);
  return {
    kind: 'stickwright-report-log',
    version: 1,
    program: null,
    startedAt: '2024-01-01T00:00:00.000Z',
    stage: null,
    domain: plan.domain,
    pad: {
      ...(isSensor ? demoPads.sensor : demoPads.plain),
      product: 'Drawn pad',
      serial: `second-${seed}`,
      transport: 'simulated',
      unit: null,
    },
    descriptor: Array.from(descriptor, (byte) => byte.toString(16).padStart(2, '0')).join(''),
    profile: isSensor ? demoProfile.id : null,
  };
}
