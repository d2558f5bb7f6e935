import { z } from 'zod';

/** The two sticks a pad can have; a pad with one stick has `left` alone. */
export type StickId = 'left' | 'right';

export const STICKS: readonly StickId[] = ['left', 'right'];

/** What raw counts mean: before the pad's stored mapping (only a profile may say so), or after it or unknown. */
export const domainSchema = z.enum(['sensor', 'reported']);
export type Domain = z.infer<typeof domainSchema>;

/** One axis of a stick as its report field gives it. */
export interface AxisField {
  /** Field limits in raw counts. */
  readonly minimum: number;
  readonly maximum: number;
  /** +1 where deflection to the right or up makes the count grow, −1 where the count shrinks (HID's habit for y). */
  readonly up: 1 | -1;
}

/** The fields of one stick. Everything that turns counts into y-up differences takes its signs from here. */
export interface StickFields {
  readonly x: AxisField;
  readonly y: AxisField;
}

/** A point in raw counts as reported (y not turned), or a pair of per-axis numbers. */
export interface Pair {
  readonly x: number;
  readonly y: number;
}
