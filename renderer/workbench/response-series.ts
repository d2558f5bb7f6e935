/** What comes out along one direction under each mapping; computed again only for what changed. */
import type { StickFields, Pair } from '../../core/pad/stick.ts';
import type { Tone } from '../../core/plot/figure.ts';
import { responseCurve } from '../../core/plot/response-curve.ts';
import type { ChainFunction } from '../../core/zones/run-chain.ts';
import type { Standing } from '../stick/standing.ts';

export interface ResponseSeries {
  readonly tone: Tone;
  /** Push and output in turn. */
  readonly points: Float64Array;
}

interface Along {
  readonly fields: StickFields;
  readonly rest: Pair;
  readonly rim: Pair;
  readonly run: ChainFunction;
}

const drawn = new WeakMap<Standing, { readonly along: Along; readonly series: ResponseSeries }>();

export function responseSeries(standing: Standing, along: Along): ResponseSeries {
  const known = drawn.get(standing);
  if (known !== undefined && isSame(known.along, along)) return known.series;
  const { fields, rest, rim, run } = along;
  const series = { tone: standing.tone, points: responseCurve(standing.mapping, fields, rest, rim, run) };
  drawn.set(standing, { along, series });
  return series;
}

function isSame(one: Along, other: Along): boolean {
  return (
    one.run === other.run &&
    one.rim.x === other.rim.x &&
    one.rim.y === other.rim.y &&
    one.rest.x === other.rest.x &&
    one.rest.y === other.rest.y
  );
}
