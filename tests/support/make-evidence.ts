/** Synthetic evidence of a stick, stated in the words of the capture: rest points, readings, rim points by direction. */
import type { Dwell, RimShape, StickEvidence, Turn } from '../../core/capture/evidence/evidence.ts';
import { rawPoint } from '../../core/mapping/raw-point.ts';
import { createRandom } from '../../core/numeric/random.ts';
import type { Pair, StickFields } from '../../core/pad/stick.ts';
import { sensorFields } from './fields.ts';

export interface DwellWish {
  readonly point: Pair;
  /** Unit vector, y up, to where the stick was let go. */
  readonly from?: Pair | null;
  /** x and y in turn, raw counts; the point itself, rounded, where not given. */
  readonly readings?: readonly number[];
  /** Middle of the dwell. */
  readonly seconds?: number;
  readonly variance?: Pair | null;
  readonly reports?: number;
}

/** Half a second of rest around a middle; 500 reports unless said otherwise. */
export function makeDwell(wish: DwellWish): Dwell {
  const { point, from = null, seconds = 0, variance = null, reports = 500 } = wish;
  const readings = wish.readings ?? [Math.round(point.x), Math.round(point.y)];
  const xs = readings.filter((_, index) => index % 2 === 0);
  const ys = readings.filter((_, index) => index % 2 === 1);
  return {
    startUs: (seconds - 0.25) * 1e6,
    endUs: (seconds + 0.25) * 1e6,
    point,
    reports,
    variance,
    least: { x: Math.min(...xs), y: Math.min(...ys) },
    greatest: { x: Math.max(...xs), y: Math.max(...ys) },
    from,
    readings,
  };
}

export interface TurnWish {
  readonly way: Turn['way'];
  /** Radius in counts by direction, or null where the turn has no reading. */
  readonly radius: (degrees: number) => number | null;
}

/** A turn whose rim point lies exactly in each direction. */
export function makeTurn(wish: TurnWish, about: Pair, fields: StickFields, startUs = 0): Turn {
  const points = Array.from({ length: 72 }, (_, index) => {
    const radius = wish.radius(5 * index);
    const turn = (5 * index * Math.PI) / 180;
    return radius === null ? null : { x: radius * Math.cos(turn), y: radius * Math.sin(turn) };
  });
  const raw = points.flatMap((point) => (point === null ? [] : [rawPoint(about, fields, point)]));
  return {
    way: wish.way,
    startUs,
    endUs: startUs + 3e6,
    points,
    extremes: {
      xMin: Math.min(...raw.map((one) => one.x)),
      xMax: Math.max(...raw.map((one) => one.x)),
      yMin: Math.min(...raw.map((one) => one.y)),
      yMax: Math.max(...raw.map((one) => one.y)),
    },
  };
}

const noShape: RimShape = { circle: null, ellipse: null, roundness: null };

export interface EvidenceWish {
  readonly fields?: StickFields;
  readonly dwells?: readonly DwellWish[] | null;
  readonly turns?: readonly TurnWish[] | null;
  /** Middle of the directions; the middle of the fields where not given. */
  readonly about?: Pair;
  readonly shape?: RimShape;
}

export function makeEvidence(wish: EvidenceWish): StickEvidence {
  const { fields = sensorFields, dwells = null, turns = null, shape = noShape } = wish;
  const about = wish.about ?? {
    x: (fields.x.minimum + fields.x.maximum) / 2,
    y: (fields.y.minimum + fields.y.maximum) / 2,
  };
  const made = turns?.map((turn, index) => makeTurn(turn, about, fields, index * 4e6)) ?? [];
  const points = made[0]?.points ?? [];
  return {
    fields,
    rest: dwells === null ? null : { dwells: dwells.map(makeDwell) },
    rim:
      turns === null
        ? null
        : {
            about,
            turns: made,
            shape,
            trace: points.flatMap((point) => {
              if (point === null) return [];
              const raw = rawPoint(about, fields, point);
              return [Math.round(raw.x), Math.round(raw.y)];
            }),
          },
    captures: 'marked',
  };
}

/** Three turns each way along one gate. */
export function sixTurns(radius: (degrees: number) => number | null): TurnWish[] {
  return (['clockwise', 'counterClockwise'] as const).flatMap((way) => Array<TurnWish>(3).fill({ way, radius }));
}

export interface BenchStick {
  readonly seed: number;
  readonly releases: number;
  readonly rest: Pair;
  /** σ of the rest points over releases, and of the readings within a dwell, counts. */
  readonly scatter: number;
  readonly noise: number;
  readonly gate: number;
}

/** What a survey of a plausible stick gives: noisy releases from spread directions, three turns each way. */
export function makeBenchStick(stick: BenchStick, fields: StickFields = sensorFields): StickEvidence {
  const random = createRandom(stick.seed);
  const dwells = Array.from({ length: stick.releases }, (_, index): DwellWish => {
    const spot = {
      x: stick.rest.x + stick.scatter * random.normal(),
      y: stick.rest.y + stick.scatter * random.normal(),
    };
    const readings = Array.from({ length: 24 }, () => [
      Math.round(spot.x + stick.noise * random.normal()),
      Math.round(spot.y + stick.noise * random.normal()),
    ]).flat();
    const turn = (2 * Math.PI * index) / stick.releases;
    return {
      point: spot,
      readings,
      seconds: 2 * index,
      from: { x: Math.cos(turn), y: Math.sin(turn) },
      variance: { x: stick.noise ** 2, y: stick.noise ** 2 },
    };
  });
  const turns = sixTurns(() => null).map(({ way }) => ({
    way,
    radius: () => stick.gate * (1 + 0.003 * random.normal()),
  }));
  return makeEvidence({ fields, dwells, turns, about: stick.rest });
}
