/** A stick as findings look at it, healthy unless wished otherwise; its rest and rim are measured from synthetic evidence. */
import type { AxisTravel, TravelMeasure } from '../../../core/measure/travel-measure.ts';
import type { StickReport } from '../../../core/measure/measure-report.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { measureRest } from '../../../core/measure/rest.ts';
import { measureRim } from '../../../core/measure/rim.ts';
import type { Pair } from '../../../core/pad/stick.ts';
import { fitOutline } from '../../../core/findings/outline/fit-outline.ts';
import type { Subject } from '../../../core/findings/subject.ts';
import { sensorFields } from '../../support/fields.ts';
import { makeEvidence, sixTurns, type DwellWish } from '../../support/make-evidence.ts';

/** Counts from the rest to the gate. */
export const HALF = 1250;
export const REST: Pair = { x: 2048, y: 2048 };

export interface SubjectWish {
  readonly rest?: Pair;
  readonly releases?: number;
  /** Counts by which the rests lie to either side, and σ of the readings. */
  readonly scatter?: number;
  readonly noise?: number;
  /** Radius of the rim in a direction, in half travels; null where it was not covered. */
  readonly radius?: ((degrees: number) => number | null) | null;
  readonly mapping?: StickMapping;
  readonly report?: Partial<StickReport>;
  readonly subject?: Partial<Subject>;
}

const axis = { min: 2048 - 1225, centre: 2048, max: 2048 + 1225 };
export const fittingMapping: StickMapping = { x: axis, y: axis };

/** Rests on a circle of the scatter about the mean, 15° apart. */
function dwellsOf({ rest = REST, releases = 24, scatter = 6, noise = 1.2 }: SubjectWish): DwellWish[] {
  return Array.from({ length: releases }, (_, number) => {
    const turn = (2 * Math.PI * number) / Math.max(1, releases);
    const from = { x: Math.cos(turn), y: Math.sin(turn) };
    return {
      point: { x: rest.x + scatter * from.x, y: rest.y + scatter * from.y },
      from,
      seconds: number,
      variance: { x: noise ** 2, y: noise ** 2 },
    };
  });
}

export function makeSubject(wish: SubjectWish = {}): Subject {
  const { rest = REST, radius = () => 1, mapping = fittingMapping } = wish;
  const scaled = (degrees: number): number | null => {
    const share = radius?.(degrees) ?? null;
    return share === null ? null : HALF * share;
  };
  const dwells = wish.releases === 0 ? null : dwellsOf(wish);
  const turns = radius === null ? null : sixTurns(scaled);
  const evidence = makeEvidence({ fields: sensorFields, dwells, turns, about: rest });
  const report: StickReport = {
    rest: measureRest(evidence, mapping),
    rim: measureRim(evidence, mapping),
    travel: null,
    flick: null,
    disturbance: null,
    allan: null,
    warmUp: null,
    captures: 'marked',
    lacks: [],
    mapping,
    mappingFrom: 'stored',
    ...wish.report,
  };
  const points = (report.rim?.directions ?? []).flatMap(({ angle, x, y, covered }) =>
    x !== null && y !== null && covered ? [{ angle, dx: x, dy: y }] : [],
  );
  return {
    stick: 'left',
    report,
    fields: sensorFields,
    domain: 'sensor',
    outline: fitOutline(points),
    aboutRest: (report.rest?.releases ?? 0) > 0,
    half: { x: HALF, y: HALF },
    pinned: [],
    extents: { x: { least: 798, greatest: 3298 }, y: { least: 798, greatest: 3298 } },
    prompted: null,
    unsettled: null,
    layers: null,
    losses: [],
    readings: 10_000,
    intervalUs: 1000,
    returns: Array.from({ length: 24 }, () => ({ seconds: 0.06, whole: true })),
    together: 0,
    rests: (dwells ?? []).map(({ point }) => point),
    odd: [],
    unpushed: [],
    surveyUs: 24e6,
    restCaptures: 1,
    gateFrom: null,
    surveys: 1,
    middleBand: null,
    ...wish.subject,
  };
}

/** A round gate seen from a rest that stands off its centre: `shift` of the rest along +x, in half travels. */
export function shiftedGate(shift: number): (degrees: number) => number {
  return (degrees) => {
    const turn = (degrees * Math.PI) / 180;
    return -shift * Math.cos(turn) + Math.sqrt(1 - (shift * Math.sin(turn)) ** 2);
  };
}

/** A round gate of which the side toward +x reads short by a share. */
export function shortGate(short: number): (degrees: number) => number {
  return (degrees) => {
    const turn = (degrees * Math.PI) / 180;
    const gain = Math.cos(turn) > 0 ? 1 - short : 1;
    return 1 / Math.hypot(Math.cos(turn) / gain, Math.sin(turn));
  };
}

/** A round gate behind axes that lean toward each other by so many degrees, half of it each. */
export function skewedGate(skew: number): (degrees: number) => number {
  const lean = Math.tan((skew * Math.PI) / 360);
  return (degrees) => {
    const turn = (degrees * Math.PI) / 180;
    const x = (Math.cos(turn) - lean * Math.sin(turn)) / (1 - lean * lean);
    const y = (Math.sin(turn) - lean * Math.cos(turn)) / (1 - lean * lean);
    return 1 / Math.hypot(x, y);
  };
}

/** An axis that was swept from gate to gate and shows nothing. */
export const soundTravel: AxisTravel = {
  min: 798,
  max: 3298,
  missing: 0,
  longestRun: 0,
  runs: [],
  judgedShare: 1,
  jumps: 0,
  jumpsAt: [],
  backwards: 0,
  backwardsAt: [],
  unsteady: [],
  step: 1,
};

export function makeTravel(wish: Partial<TravelMeasure> = {}): TravelMeasure {
  return {
    sweeps: 8,
    x: soundTravel,
    y: soundTravel,
    turnAngle: 0.4,
    turnU95: 2.5,
    skewAngle: 0.2,
    skewU95: 1,
    seenAngle: { x: 0, y: 90 },
    ...wish,
  };
}
