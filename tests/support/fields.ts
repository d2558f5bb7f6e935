/** Stick fields that tests build on. */
import type { StickFields } from '../../core/pad/stick.ts';

/** Twelve bits a value, both counts growing right and up, as a sensor gives them. */
export const sensorFields: StickFields = {
  x: { minimum: 0, maximum: 4095, up: 1 },
  y: { minimum: 0, maximum: 4095, up: 1 },
};

/** Eight bits a value, y growing downwards, as HID pads report. */
export const reportedFields: StickFields = {
  x: { minimum: 0, maximum: 255, up: 1 },
  y: { minimum: 0, maximum: 255, up: -1 },
};
