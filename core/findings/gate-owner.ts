/** Whose survey may tell of a gate: the gate is in the shell, so both surveys must be of one pad. */
import { kinshipOf } from '../pad/owner.ts';
import { wholePadName, type OfPad } from '../pad/pad-name.ts';
import { failed, type Problem } from '../result.ts';

/** Null where nothing known of both tells the pads apart. */
export function refuseGateOwner(told: OfPad, judged: OfPad): Problem | null {
  if (kinshipOf(told.pad, judged.pad) !== 'other') return null;
  return failed(
    'gate-of-other-pad',
    `That survey is of another pad (${wholePadName(told)}), whose shell has a gate of its own; choose a survey of ${wholePadName(judged)}.`,
  ).problem;
}

/** A sentence where it is not sure that both are of one pad; else null. */
export function doubtGateOwner(told: OfPad, judged: OfPad): string | null {
  if (kinshipOf(told.pad, judged.pad) !== 'unknown') return null;
  return `Nothing known of both tells whether that survey is of this very pad (${wholePadName(told)}); it holds only if it was taken in this shell.`;
}
