/** The profile of the simulated pads with sensor counts. */
import type { Profile, ProfileField } from './profile.ts';

/**
 * Vendor number 0x1209 is shared by open projects, and its product numbers 0x0001 … 0x0010 are kept for private tests
 * (from memory), so that no product on sale has them. These two are the program's own demo pads.
 */
export const demoPads = {
  /** 12-bit counts of the sensors, before any mapping. */
  sensor: { vendorId: 0x1209, productId: 0x000a },
  /** Known by its descriptor alone. */
  plain: { vendorId: 0x1209, productId: 0x000b },
} as const;

/** Input report 1 of the sensor pads, without its id byte: offsets in bits. */
const demoReport = {
  reportId: 1,
  byteLength: 11,
  leftX: 0,
  leftY: 12,
  rightX: 24,
  rightY: 36,
  leftTrigger: 48,
  rightTrigger: 56,
  hat: 64,
  firstButton: 68,
  buttons: 16,
  clicks: { left: 11, right: 12 },
} as const;

function packed(bitOffset: number, up: 1 | -1): ProfileField {
  return { bitOffset, bitSize: 12, minimum: 0, maximum: 4095, up };
}

export const demoProfile: Profile = {
  id: 'demo-sensor-counts',
  pads: [demoPads.sensor],
  report: { reportId: demoReport.reportId, byteLength: demoReport.byteLength },
  domain: 'sensor',
  sticks: {
    left: { x: packed(demoReport.leftX, 1), y: packed(demoReport.leftY, -1) },
    right: { x: packed(demoReport.rightX, 1), y: packed(demoReport.rightY, -1) },
  },
  triggers: {
    left: { bitOffset: demoReport.leftTrigger, bitSize: 8, minimum: 0, maximum: 255, up: 1 },
    right: { bitOffset: demoReport.rightTrigger, bitSize: 8, minimum: 0, maximum: 255, up: 1 },
  },
  hat: { bitOffset: demoReport.hat, bitSize: 4, minimum: 0, maximum: 7 },
  buttons: Array.from({ length: demoReport.buttons }, (_, index) => ({
    usage: index + 1,
    bitOffset: demoReport.firstButton + index,
  })),
  clicks: demoReport.clicks,
  start: [],
};
