/** Will this chain hide this rest, and at what cost? */
import type { StickEvidence } from '../capture/evidence.ts';
import { directionCount } from '../geometry/angle.ts';
import { deflect, limit } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { rawPoint } from '../mapping/raw-point.ts';
import { directionPoints } from '../measure/direction-points.ts';
import { meanRest, settledDwells } from '../measure/mean-rest.ts';
import { toleranceRadius } from '../measure/tolerance-radius.ts';
import type { Pair } from '../pad/stick.ts';
import type { Chain, ZoneAnswer } from './chain.ts';
import { hidesDisc } from './hides-disc.ts';
import { countLeaks } from './leaks.ts';
import { fullTilt, onsetAlong } from './onset.ts';
import { outputOf } from './output.ts';
import { compileChain, type ChainFunction } from './run-chain.ts';
import { smallestZone } from './smallest-zone.ts';

/**
 * Everything `zones` prints of one stick. What rests on releases is null without any, what rests on a rim without a rim; a
 * stick that only lay still has a smallest zone for what was seen, and an onset. Onset angles are directions of the deflection, from the deflection of the mean rest; it is looked for up to
 * the gate, which is the distance from that rest to the rim point of a covered direction, and full tilt |d| = 1 where the
 * direction is not covered. `hidden` takes the tolerance radius and with it twelve releases; with fewer, clean ones are
 * `hidden in n of n seen`. Unevenness is taken over the directions that answer, `unreached` over those that are covered.
 */
export function answerZones(evidence: StickEvidence, mapping: StickMapping, chain: Chain): ZoneAnswer {
  const run = compileChain(chain);
  const gate = gatePoints(evidence, mapping);
  const rest = answerRest(evidence, mapping, chain, run);
  const onset = rest.deflection === null ? null : onsets(run, rest.deflection, gate);
  const outputs = gate?.map(({ angle, d, covered }) => ({ angle, output: d === null ? null : reach(run, d), covered }));
  return {
    leaks: rest.leaks,
    hides: rest.hides,
    smallestZone: rest.smallestZone,
    onset,
    unevenness: onset === null ? null : unevenness(onset),
    gate: outputs ?? null,
    unreached: chain.needs === null || outputs === undefined ? null : belowNeed(outputs, chain.needs),
  };
}

interface GatePoint {
  readonly angle: number;
  /** Free deflection of the rim point; null where none was read. */
  readonly d: Pair | null;
  readonly covered: boolean;
}

function gatePoints({ rim, fields }: StickEvidence, mapping: StickMapping): GatePoint[] | null {
  if (rim === null) return null;
  return directionPoints(rim.turns).map(({ angle, point, state }) => ({
    angle,
    d: point === null ? null : deflect(mapping, fields, rawPoint(rim.about, fields, point)),
    covered: state === 'covered',
  }));
}

type RestAnswer = Pick<ZoneAnswer, 'leaks' | 'hides' | 'smallestZone'> & { readonly deflection: Pair | null };

function answerRest(evidence: StickEvidence, mapping: StickMapping, chain: Chain, run: ChainFunction): RestAnswer {
  const { rest, fields } = evidence;
  const dwells = settledDwells(evidence);
  if (dwells.length === 0) return { leaks: null, hides: null, smallestZone: null, deflection: null };
  const leaks = countLeaks(rest?.dwells ?? [], mapping, fields, run);
  const tolerance = toleranceRadius(evidence, mapping);
  const deflection = deflect(mapping, fields, meanRest(dwells));
  const offset = limit(deflection);
  // Without a chain what comes out at rest is the limited deflection itself.
  const bare = countLeaks(dwells, mapping, fields, compileChain({ stages: [] }));
  return {
    leaks,
    hides: leaks === null ? null : sayHides(leaks, tolerance !== null && hidesDisc(run, chain.stages, tolerance)),
    smallestZone: smallestZone(bare?.largestOutput ?? 0, tolerance, Math.hypot(offset.x, offset.y)),
    deflection,
  };
}

function sayHides({ leaking, releases }: NonNullable<ZoneAnswer['leaks']>, hidesTolerance: boolean): string {
  if (leaking > 0) return 'leaks';
  return hidesTolerance ? 'hidden' : `hidden in ${releases} of ${releases} seen`;
}

function onsets(run: ChainFunction, rest: Pair, gate: readonly GatePoint[] | null): NonNullable<ZoneAnswer['onset']> {
  return Array.from({ length: directionCount }, (_, index) => {
    const angle = (360 / directionCount) * index;
    const at = gate?.[index];
    const far =
      at?.covered === true && at.d !== null ? Math.hypot(at.d.x - rest.x, at.d.y - rest.y) : fullTilt(rest, angle);
    return { angle, deflection: onsetAlong(run, rest, angle, far) };
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
