/** What kind of pad a stick is in: how its reports are made, how often they come and how many arrive. */
import type { Chance } from './chance.ts';

export const padKinds = [
  'sensor12',
  'sensor10',
  'sensor8',
  'reported8',
  'reported10',
  'reported12',
  'reported16',
] as const;
export type PadKind = (typeof padKinds)[number];

/** Single reports, or runs of them, once in so many; `told`: a running number shows that they are missing. */
export interface Loss {
  readonly once: number;
  readonly run: number;
  readonly told: boolean;
}

/** `sensor`: counts of the converter in 12-bit fields. `reported`: mapped by the pad onto fields of `fieldBits`. */
export interface PadPlan {
  readonly kind: PadKind;
  readonly domain: 'sensor' | 'reported';
  readonly converterBits: number;
  readonly fieldBits: number;
  readonly signed: boolean;
  /** The right stick is Rx and Ry, or Z and Rz. */
  readonly rightIs: 'rotation' | 'z';
  readonly rateHz: number;
  /** σ of the arrival about the even spacing, seconds. */
  readonly jitter: number;
  readonly onChange: boolean;
  readonly loss: Loss | null;
  /** The middle is pressed to nothing within this share of the half field. */
  readonly band: { readonly kind: 'dead' | 'snap'; readonly round: boolean; readonly size: number } | null;
  /** Counts grow the other way than the fields say. */
  readonly inverted: { readonly x: boolean; readonly y: boolean };
  readonly swapped: boolean;
  /** A trigger that stays at a share of its travel after it was pressed, or that shows nothing. */
  readonly trigger: { readonly side: 'left' | 'right'; readonly stays: number | 'dead' } | null;
}

const SENSOR_BITS = { sensor12: 12, sensor10: 10, sensor8: 8 } as const;
const FIELD_BITS = { reported8: 8, reported10: 10, reported12: 12, reported16: 16 } as const;

export function drawPad(kind: PadKind, chance: Chance): PadPlan {
  const isSensor = kind === 'sensor12' || kind === 'sensor10' || kind === 'sensor8';
  return {
    kind,
    domain: isSensor ? 'sensor' : 'reported',
    converterBits: isSensor ? SENSOR_BITS[kind] : kind === 'reported16' ? chance.pick([12, 14, 16]) : 12,
    fieldBits: isSensor ? 12 : FIELD_BITS[kind],
    signed: !isSensor && (kind === 'reported16' ? chance.happens(0.7) : chance.happens(0.25)),
    rightIs: chance.pick(['rotation', 'z']),
    rateHz: chance.pick([66, 125, 250, 500, 1000]),
    jitter: chance.between(0.00002, 0.0003),
    onChange: chance.happens(isSensor ? 0.15 : 0.35),
    loss: drawLoss(chance),
    band: null,
    inverted: { x: false, y: false },
    swapped: false,
    trigger: null,
  };
}

/** A cable loses nothing; a radio loses a report now and then, or some in a row. */
function drawLoss(chance: Chance): Loss | null {
  if (chance.happens(0.7)) return null;
  const isRun = chance.happens(0.4);
  return {
    once: isRun ? chance.whole(6000, 20_000) : chance.whole(1500, 5000),
    run: isRun ? chance.whole(3, 12) : 1,
    told: chance.happens(0.5),
  };
}
