/**
 * What the second blind test misses as the program stands: said at the end of every run, and not failing it. What each reaches is of
 * 24 draws of a fault and 16 of a slip on each kind of pad named, seed 1 (6 of `trigger-dead`). What is mended leaves the list.
 */
import { NAMED, NOT_KEPT, TOLD, type Part } from './demands.ts';

export type Where = Pick<NotGated, 'part' | 'name'> & { readonly pad: string };

interface NotGated {
  readonly part: Part | 'curve';
  readonly name: string;
  readonly pads: readonly string[];
  /** What was asked and is not reached; all else of the cell is gated. */
  readonly of: readonly string[];
  readonly reaches: string;
  readonly why: string;
}

/** Of pools that take all kinds of pad together. */
export const EVERY_PAD = 'every pad';

const ALL_PADS = ['sensor12', 'reported8', 'reported16'];
const FINE_AND_BYTE = ['sensor12', 'reported8'];
const BOTH = [NAMED, NOT_KEPT];

export const notGated: readonly NotGated[] = [
  {
    part: 'far',
    name: 'curved',
    pads: ALL_PADS,
    of: BOTH,
    reaches: '34 of 72 named',
    why: 'Up to a bend of 9 % 16 of 45, above 18 of 27: the others are within all limits.',
  },
  {
    part: 'far',
    name: 'shared-ground',
    pads: FINE_AND_BYTE,
    of: BOTH,
    reaches: '39 of 48 named',
    why: 'The others stay within the limit of a skewed part, or it cannot be told whether they do.',
  },
  {
    part: 'far',
    name: 'loose-sector',
    pads: ALL_PADS,
    of: BOTH,
    reaches: '39 of 72 named',
    why: 'It loses the signal at some visits only: the others are kept, or their gate counts as not covered there.',
  },
  {
    part: 'far',
    name: 'dead-sector',
    pads: FINE_AND_BYTE,
    of: [NAMED],
    reaches: '37 of 48 named, all not kept',
    why: 'The gate of the others counts as not covered there: they are undecided.',
  },
  {
    part: 'far',
    name: 'clipped',
    pads: FINE_AND_BYTE,
    of: BOTH,
    reaches: '34 of 48 named',
    why: 'The others are within all limits.',
  },
  {
    part: 'far',
    name: 'noise',
    pads: ALL_PADS,
    of: BOTH,
    reaches: '60 of 72 named',
    why: 'Up to 9 times the noise of a sound part 32 of 42, above 28 of 30.',
  },
  {
    part: 'far',
    name: 'slow-return',
    pads: ALL_PADS,
    of: [NAMED],
    reaches: '66 of 72 named, all not kept',
    why: 'Bytes of a stick that creeps may stand still long enough for a rest: its returns count to there, and the creeping reads as noise.',
  },
  {
    part: 'far',
    name: 'overshoot',
    pads: FINE_AND_BYTE,
    of: BOTH,
    reaches: '38 of 48 named',
    why: 'At 66 reports a second none of 12 of all pads.',
  },
  {
    part: 'far',
    name: 'outlier-rest',
    pads: ALL_PADS,
    of: [NOT_KEPT],
    reaches: '72 of 72 named, 0 not kept',
    why: 'One release that lies apart is named and left out, to be taken again: it decides nothing.',
  },
  {
    part: 'far',
    name: 'drifting-rest',
    pads: ['reported8'],
    of: BOTH,
    reaches: '21 of 24 named',
    why: 'Its drift of 3 to 6 % is four to eight counts of a byte.',
  },
  {
    part: 'whole',
    name: 'trigger-dead',
    pads: ALL_PADS,
    of: [NAMED],
    reaches: '0 of 18 named',
    why: 'A trigger that never moved may not have been pulled: it is left open.',
  },
  {
    part: 'slip',
    name: 'turned-back',
    pads: ALL_PADS,
    of: [TOLD],
    reaches: '0 of 48 told',
    why: 'Turns that go back by 40° and on again cover the gate all the same.',
  },
  {
    part: 'slip',
    name: 'too-fast-turns',
    pads: ALL_PADS,
    of: [TOLD],
    reaches: '22 of 48 told',
    why: 'Four turns a second cover the gate where reports come fast enough.',
  },
  {
    part: 'slip',
    name: 'bad-release',
    pads: ['sensor12', 'reported16'],
    of: [TOLD],
    reaches: '17 of 32 told',
    why: 'A thumb that trembles on the stick leaves no stretch that is still: where nothing marks one, 23 releases of 24 are taken.',
  },
];

/**
 * Why this miss only is reported; null where it fails the run. The name of a pool begins with that of its cells; what is not reached at 2 to 4
 * times a size is not asked at 1.5 times.
 */
export function whyNotGated(
  of: { readonly part: Part | 'curve'; readonly name: string; readonly pad: string },
  what: string,
): string | null {
  const known = notGated.find(
    ({ part, name, pads, of: asked }) =>
      part === (of.part === 'near' ? 'far' : of.part) &&
      of.name.split(',')[0] === name &&
      (of.pad === EVERY_PAD || pads.includes(of.pad)) &&
      asked.includes(what),
  );
  return known === undefined ? null : `${known.why} Reached: ${known.reaches}.`;
}

export function sayNotGated({ part, name, pads, of, reaches, why }: NotGated): string {
  return `not gated: ${part} ${name} on ${pads.join(', ')}, ${of.join(' and ')}: ${reaches}. ${why}`;
}
