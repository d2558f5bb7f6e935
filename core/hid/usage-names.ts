/** Usage pages and usages that the program acts on (HID Usage Tables). */
import type { Control, Usage } from './control.ts';

export const pages = {
  genericDesktop: 0x01,
  simulation: 0x02,
  game: 0x05,
  button: 0x09,
} as const;

export const desktop = {
  joystick: 0x04,
  gamePad: 0x05,
  multiAxis: 0x08,
  x: 0x30,
  y: 0x31,
  z: 0x32,
  rx: 0x33,
  ry: 0x34,
  rz: 0x35,
  slider: 0x36,
  dial: 0x37,
  wheel: 0x38,
  hatSwitch: 0x39,
  dPadUp: 0x90,
  dPadDown: 0x91,
  dPadRight: 0x92,
  dPadLeft: 0x93,
} as const;

export const simulation = {
  rudder: 0xba,
  throttle: 0xbb,
  accelerator: 0xc4,
  brake: 0xc5,
  clutch: 0xc6,
  steering: 0xc8,
} as const;

export const game = { pointOfView: 0x20 } as const;

/** The control carries this usage, by its own name or by an alias. */
export function hasUsage(control: Control, usagePage: number, usage: number): boolean {
  if (control.usagePage === usagePage && control.usage === usage) return true;
  return control.aliases.some((alias) => alias.usagePage === usagePage && alias.usage === usage);
}

/** `PAGE:USAGE`, four upper-case hex digits each: the key of a value in the output of `decode`. */
export function usageKey(usage: Usage): string {
  return `${fourDigits(usage.usagePage)}:${fourDigits(usage.usage)}`;
}

function fourDigits(value: number): string {
  return value.toString(16).toUpperCase().padStart(4, '0');
}
