/** The inverse question: the smallest setting of the driver with which a consumer hides the rest in all of n surveys. */
import type { Dwell } from '../capture/evidence/evidence.ts';
import { deflect, limit } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { StickFields, StickId } from '../pad/stick.ts';
import type { Chain, Stage } from './chain.ts';
import type { Consumer } from './consumer.ts';
import { hidesDisc } from './hides-disc.ts';
import { outputOf } from './output.ts';
import { compileChain, type ChainFunction } from './run-chain.ts';

/** What one survey proves of the rest of the stick, under the mapping that the pad had or will have. */
export interface SurveyedRest {
  readonly dwells: readonly Dwell[];
  readonly fields: StickFields;
  readonly mapping: StickMapping;
  /** Holds 99 % of releases with 95 % confidence; null with fewer than twelve releases. */
  readonly toleranceRadius: number | null;
}

export interface DriverSetting {
  /** Inner edge of the driver's scaled radial zone that hides every reading seen in all surveys; null where none does. */
  readonly observed: number | null;
  /** The one that hides the tolerance radius of every survey too; null where none does, or a survey has none. */
  readonly tolerance99: number | null;
  /** Why no setting helps, in one plain sentence; null where one does. */
  readonly why: string | null;
}

/** Settings are tried from nothing up in steps of this, then the edge is halved: a chain need not be monotone. */
const STEP = 1 / 512;
const HALVINGS = 20;
const LARGEST = 0.95;

/**
 * The driver is a scaled radial zone from the setting to 1, and nothing else. A consumer that takes the pad's own output sees
 * nothing of it: the setting is 0 if it hides the rest by itself, and none otherwise.
 */
export function smallestDriverSetting(
  surveys: readonly SurveyedRest[],
  stick: StickId,
  consumer: Consumer,
): DriverSetting | null {
  const own = consumer.chains[stick];
  if (own === undefined || surveys.length === 0) return null;
  const readings = surveys.flatMap(readingsOf);
  const radii = surveys.map(({ toleranceRadius }) => toleranceRadius);
  const hidesSeen = (run: ChainFunction): boolean => {
    const out = new Float64Array(2);
    return readings.every(({ x, y }) => outputOf(run, x, y, out) === 0);
  };
  const hidesRadii = (run: ChainFunction, chain: Pick<Chain, 'stages'>): boolean =>
    radii.every((radius) => radius !== null && hidesDisc(run, chain.stages, radius));
  const most = consumer.takes === 'pad' ? 0 : LARGEST;
  const observed = smallest(own.stages, most, (run) => hidesSeen(run));
  const tolerance99 = radii.includes(null)
    ? null
    : smallest(own.stages, most, (run, chain) => hidesSeen(run) && hidesRadii(run, chain));
  return { observed, tolerance99, why: observed === null ? whyNone(consumer, own.stages) : null };
}

function readingsOf({ dwells, fields, mapping }: SurveyedRest): { x: number; y: number }[] {
  return dwells.flatMap(({ readings }) =>
    Array.from({ length: readings.length / 2 }, (_, i) =>
      limit(deflect(mapping, fields, { x: readings[2 * i] ?? Number.NaN, y: readings[2 * i + 1] ?? Number.NaN })),
    ),
  );
}

function smallest(
  own: readonly Stage[],
  most: number,
  hides: (run: ChainFunction, chain: Pick<Chain, 'stages'>) => boolean,
): number | null {
  const isGood = (setting: number): boolean => {
    const chain = { stages: setting === 0 ? own : [driverZone(setting), ...own] };
    return hides(compileChain(chain), chain);
  };
  let before = 0;
  if (isGood(0)) return 0;
  for (let setting = STEP; setting <= most; setting += STEP) {
    if (isGood(setting)) return halve(isGood, before, setting);
    before = setting;
  }
  return null;
}

function halve(isGood: (setting: number) => boolean, from: number, to: number): number {
  let [bad, good] = [from, to];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (bad + good) / 2;
    if (isGood(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/** The driver's stage for a setting. */
export function driverZone(setting: number): Stage {
  return { zone: 'scaledRadial', inner: setting, outer: 1 };
}

function whyNone(consumer: Consumer, own: readonly Stage[]): string {
  if (consumer.takes === 'pad')
    return `${consumer.name} takes the pad's own output and sees nothing of what the driver does; only the pad's calibration or the consumer's own zone can help.`;
  if (outputOf(compileChain({ stages: own }), 0, 0, new Float64Array(2)) > 0)
    return `${consumer.name} makes output even of nothing; no zone before it can hide a rest.`;
  return `No driver zone up to ${Math.round(100 * LARGEST)} % hides the rest for ${consumer.name}.`;
}
