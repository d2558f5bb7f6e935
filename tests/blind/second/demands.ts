/** What is asked of the cells of each part of the second blind test. */
import type { Demand } from '../demand.ts';
import { isNamed } from './fault-named.ts';
import type { FaultName } from './faults.ts';
import type { Judged } from './judge-draw.ts';
import { namesSlip } from './slip-names.ts';

/**
 * `sound` sticks by gate; `slip` of a hand about a sound stick; `whole` faults without degrees; `far` beyond their half-visible size, at 2 to 4
 * times of it; `near`, at 1.5 times; `pair` of faults at 3 times.
 */
export type Part = 'sound' | 'slip' | 'whole' | 'far' | 'near' | 'pair';

export interface Asked {
  readonly demand: Demand;
  /** Which draws it is asked of. */
  readonly isAskedOf: (judged: Pick<Judged, 'wish'>) => boolean;
  readonly holds: (judged: Judged) => boolean;
}

const ACTS: readonly string[] = ['recalibrate', 'reseat', 'replace'];
const WORK: readonly string[] = ['reseat', 'replace'];

export const NAMED = 'named first or second';
export const NOT_KEPT = 'not kept';
export const TOLD = 'told what was wrong';

const all = (): boolean => true;
const isNamedEarly = (judged: Judged): boolean => isNamed(judged, 0, 2);
const far: readonly Asked[] = [
  { demand: { what: NAMED, atLeast: 0.98 }, isAskedOf: all, holds: isNamedEarly },
  {
    demand: { what: NOT_KEPT, atLeast: 0.95 },
    isAskedOf: isStickFaulty,
    holds: ({ verdict }) => verdict !== 'keep',
  },
];

export const demands: Readonly<Record<Part, readonly Asked[]>> = {
  sound: [
    {
      demand: { what: 'called faulty', atMost: 0.02 },
      isAskedOf: all,
      holds: ({ verdict, notSo }) => ACTS.includes(verdict) || notSo.length > 0,
    },
    { demand: { what: 'kept', atLeast: 0.95 }, isAskedOf: all, holds: ({ verdict }) => verdict === 'keep' },
  ],
  slip: [
    { demand: { what: TOLD, atLeast: 0.9 }, isAskedOf: all, holds: isSlipTold },
    { demand: { what: 'reseated or replaced', atMost: 0.02 }, isAskedOf: all, holds: isWorkedOn },
  ],
  whole: far,
  far,
  near: [{ demand: { what: NAMED, atLeast: 0.8 }, isAskedOf: all, holds: isNamedEarly }],
  pair: [
    {
      demand: { what: 'both named', atLeast: 0.8 },
      isAskedOf: all,
      holds: (judged) => judged.wish.faults.every((_, at) => isNamed(judged, at, Number.POSITIVE_INFINITY)),
    },
  ],
};

/** Nothing can be done about them at the stick, whose verdict is to keep it. */
const OF_PAD: readonly FaultName[] = ['firmware-band', 'trigger-stays', 'trigger-dead'];

export function isStickFaulty({ wish }: Pick<Judged, 'wish'>): boolean {
  return wish.faults.some(({ name }) => !OF_PAD.includes(name));
}

/** The share of the draws at the wanted size that must be named: by it a half-visible size is clearly larger. */
export const HALF_SEEN: Demand = { what: 'named first or second at the wanted size', atLeast: 0.5 };

export function isWorkedOn({ verdict }: Judged): boolean {
  return WORK.includes(verdict);
}

function isSlipTold({ wish, failed, cannotSay, lacks }: Judged): boolean {
  return wish.slip !== null && namesSlip(wish.slip, [...failed, ...cannotSay, ...lacks]);
}
