/** Will this chain hide this rest, and at what cost? */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { directionAngles } from '../geometry/directions.ts';
import { limit } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { Pair } from '../pad/stick.ts';
import type { Chain, ZoneAnswer } from './chain.ts';
import { hidesDisc } from './hides-disc.ts';
import { countLeaks } from './leaks.ts';
import { fullTilt, onsetAlong } from './onset.ts';
import { outputOf } from './output.ts';
import { compileChain, type ChainFunction } from './run-chain.ts';
import { silentRadius } from './silent-radius.ts';
import { smallestZone } from './smallest-zone.ts';
import { stickUnder, type GatePoint, type StickUnder } from './stick-under.ts';

export function answerZones(evidence: StickEvidence, mapping: StickMapping, chain: Chain): ZoneAnswer {
  return answerUnder(stickUnder(evidence, mapping), chain);
}

/**
 * Everything `zones` prints of one stick. What rests on releases is null without any, what rests on a rim without a rim; a
 * stick that only lay still has a smallest zone for what was seen, and an onset. Onset angles are directions of the deflection, from the deflection of the mean rest; it is looked for up to
 * the gate, which is the distance from that rest to the rim point of a covered direction, and full tilt |d| = 1 where the
 * direction is not covered. `hidden` takes the tolerance radius and with it twelve releases; with fewer, clean ones are
 * `hidden in n of n seen`. Unevenness is taken over the directions that answer, `unreached` over those that are covered.
 */
export function answerUnder(under: StickUnder, chain: Chain): ZoneAnswer {
  const run = compileChain(chain);
  const { gate, rest } = under;
  const onset = rest === null ? null : onsets(run, rest, gate, silentRadius(run, chain.stages));
  const outputs = gate?.map(({ angle, d, covered }) => ({ angle, output: d === null ? null : reach(run, d), covered }));
  return {
    ...answerRest(under, chain, run),
    onset,
    unevenness: onset === null ? null : unevenness(onset),
    gate: outputs ?? null,
    unreached: chain.needs === null || outputs === undefined ? null : belowNeed(outputs, chain.needs),
  };
}

function answerRest(
  { releases, rest, largestAtRest, toleranceRadius: tolerance }: StickUnder,
  chain: Chain,
  run: ChainFunction,
): Pick<ZoneAnswer, 'leaks' | 'hides' | 'smallestZone'> {
  if (rest === null || largestAtRest === null) return { leaks: null, hides: null, smallestZone: null };
  const leaks = countLeaks(releases, run);
  const offset = limit(rest);
  return {
    leaks,
    hides: leaks === null ? null : sayHides(leaks, tolerance !== null && hidesDisc(run, chain.stages, tolerance)),
    smallestZone: smallestZone(largestAtRest, tolerance, Math.hypot(offset.x, offset.y)),
  };
}

function sayHides({ leaking, releases }: NonNullable<ZoneAnswer['leaks']>, hidesTolerance: boolean): string {
  if (leaking > 0) return 'leaks';
  return hidesTolerance ? 'hidden' : `hidden in ${releases} of ${releases} seen`;
}

function onsets(
  run: ChainFunction,
  rest: Pair,
  gate: readonly GatePoint[] | null,
  silent: number,
): NonNullable<ZoneAnswer['onset']> {
  return directionAngles.map((angle, index) => {
    const at = gate?.[index];
    const far =
      at?.covered === true && at.d !== null ? Math.hypot(at.d.x - rest.x, at.d.y - rest.y) : fullTilt(rest, angle);
    return { angle, deflection: onsetAlong(run, rest, angle, far, silent) };
  });
}

function unevenness(onset: NonNullable<ZoneAnswer['onset']>): number | null {
  const met = onset.flatMap(({ deflection }) => deflection ?? []);
  return met.length === 0 ? null : Math.max(...met) - Math.min(...met);
}

function reach(run: ChainFunction, d: Pair): number {
  return outputOf(run, d.x, d.y, new Float64Array(2));
}

function belowNeed(gate: NonNullable<ZoneAnswer['gate']>, needs: number): number[] {
  return gate.filter(({ output, covered }) => covered && output !== null && output < needs).map(({ angle }) => angle);
}
