/** What names a slip: findings by their id, failed or left open, and what the log lacks, by its code. */
import type { FindingId } from '../../../core/findings/finding.ts';
import type { Slip } from './slips.ts';

type LackCode = 'no-release' | 'no-turn' | 'no-whole-turn' | 'turns-one-way' | 'rest-shifted';

/**
 * Of turns that were not as asked: the gate is not covered. Of releases: one lies apart, or none counts. A stick that is let go on
 * one side only goes elsewhere than asked. Where a button is held, no release can be taken for untouched.
 */
const NAMES: Readonly<Record<Slip, readonly (FindingId | LackCode)[]>> = {
  'short-turns': ['rim-not-covered', 'no-turn', 'no-whole-turn'],
  'turned-back': ['rim-not-covered', 'no-turn', 'no-whole-turn'],
  'left-gate': ['rim-not-covered', 'no-turn', 'no-whole-turn'],
  'one-way-turns': ['rim-not-covered', 'turns-one-way'],
  'too-fast-turns': ['rim-not-covered', 'no-turn', 'no-whole-turn'],
  'one-sided-releases': ['rest-not-measured', 'swapped-axes', 'inverted-axis'],
  'no-push': ['unpushed-release', 'rest-not-measured', 'no-release', 'rest-shifted'],
  'bad-release': ['odd-release', 'rest-not-measured', 'no-release', 'rest-shifted'],
  'button-held': ['rest-not-measured', 'no-release', 'inputs-fail'],
  'wrong-stick': ['rim-not-covered', 'no-turn', 'no-whole-turn'],
};

export function namesSlip(slip: Slip, said: readonly string[]): boolean {
  return NAMES[slip].some((name) => said.includes(name));
}
