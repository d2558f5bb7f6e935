/** Turns the codes of a hat switch into directions. */
import type { Control } from '../hid/control.ts';

/** The part of a control that its directions depend on. */
export type HatRange = Pick<Control, 'logicalMinimum' | 'logicalMaximum'>;

/** Spans of fields that hold the angle itself, and the degrees that span stands for. */
const ANGLE_SPANS = [
  { span: 315, degrees: 315 },
  { span: 360, degrees: 360 },
  { span: 3150, degrees: 315 },
  { span: 3600, degrees: 360 },
  { span: 31_500, degrees: 315 },
  { span: 36_000, degrees: 360 },
] as const;

/** Degrees that one count stands for: the codes share the full circle equally, unless they are the angle itself. */
export function degreesPerCount({ logicalMinimum, logicalMaximum }: HatRange): number {
  const span = logicalMaximum - logicalMinimum;
  const angle = ANGLE_SPANS.find((known) => known.span === span);
  return angle === undefined ? 360 / (span + 1) : angle.degrees / span;
}

/** Degrees clockwise from up in [0, 360); NaN outside of the logical range, whether a null state was declared or not. */
export function hatDirection(hat: HatRange, value: number): number {
  if (!(value >= hat.logicalMinimum && value <= hat.logicalMaximum)) return Number.NaN;
  return ((value - hat.logicalMinimum) * degreesPerCount(hat)) % 360;
}

/** The direction that four switches name; NaN for none and for opposites that cancel out. */
export function dPadDirection(up: boolean, right: boolean, down: boolean, left: boolean): number {
  const x = Number(right) - Number(left);
  const y = Number(up) - Number(down);
  if (x === 0 && y === 0) return Number.NaN;
  return (450 - (Math.atan2(y, x) * 180) / Math.PI) % 360;
}
