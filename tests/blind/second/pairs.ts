/** Which two faults may be drawn at once, and which are. */
import { Chance } from './chance.ts';
import { faultNames, type FaultName } from './faults.ts';
import { namesFor } from './names.ts';

export type Pair = readonly [FaultName, FaultName];

/**
 * Faults that take each other's place or hide each other: a spring that creeps back does not swing over; a band of the firmware
 * reports nothing of what the rest does; a trigger that is dead cannot stay; axes that are exchanged and one of them inverted are a part
 * turned by a quarter.
 */
const EXCLUDES: Readonly<Partial<Record<FaultName, readonly FaultName[]>>> = {
  'slow-return': ['overshoot'],
  'firmware-band': [
    'off-centre-part',
    'seat-tilt',
    'noise',
    'slow-return',
    'loose-return',
    'two-rests',
    'outlier-rest',
    'drifting-rest',
    'stale-numbers',
  ],
  'trigger-stays': ['trigger-dead'],
  'inverted-axis': ['swapped-axes'],
};

/** All pairs of these faults that do not exclude each other; never two that one name is right about, or one finding would do for both. */
export function pairsOf(among: readonly FaultName[], domain: 'sensor' | 'reported'): Pair[] {
  const names = faultNames.filter((name) => among.includes(name));
  return names.flatMap((one, at) =>
    names
      .slice(at + 1)
      .filter((other) => !excludes(one, other) && !excludes(other, one) && !shareName(one, other, domain))
      .map((other) => [one, other] as const),
  );
}

function excludes(one: FaultName, other: FaultName): boolean {
  return EXCLUDES[one]?.includes(other) === true;
}

function shareName(one: FaultName, other: FaultName, domain: 'sensor' | 'reported'): boolean {
  const names = namesFor(one, { domain });
  return namesFor(other, { domain }).some((name) => names.includes(name));
}

/** So many of them, shuffled, none a second time before all were drawn. */
export function choosePairs(pairs: readonly Pair[], count: number, chance: Chance): Pair[] {
  const chosen: Pair[] = [];
  while (chosen.length < count && pairs.length > 0) {
    const left = [...pairs];
    while (left.length > 0 && chosen.length < count)
      chosen.push(...left.splice(Math.floor(chance.next() * left.length), 1));
  }
  return chosen;
}
