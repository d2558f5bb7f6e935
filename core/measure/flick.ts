/** Measures what a stick does when it is let go from full tilt. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { settleLimit } from '../capture/evidence/settle-detector.ts';
import type { StickTrack, Track } from '../capture/evidence/track.ts';
import { deflect } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { mean } from '../numeric/mean.ts';
import { quantile } from '../numeric/quantile.ts';
import type { Pair, StickId } from '../pad/stick.ts';
import { readFlick } from './flick-reading.ts';
import { flickReleases } from './flick-releases.ts';
import type { FlickMeasure } from './flick-measure.ts';
import { meanRest, settledDwells } from './mean-rest.ts';
import { pooledNoise } from './rest-noise.ts';

/** Restlessness that is no movement: so many σ of the noise. */
const NOISE_TIMES = 4;

/**
 * Over captures taken for flicks. Overshoot: the largest way past the mean rest on the far side along the line of the return,
 * until the stick has settled; under the mapping as a deflection.
 * Settling: from the last reading near full tilt until the stick stays at where this flick comes to rest, within the settling
 * limit of a settled stick and four σ of the noise. A flick whose return is told by fewer than a reading in 12 ms, or that does not settle
 * in 450 ms, is `unread`. Null
 * without such a capture, without a rest, or where no flick could be read. Source: definitions of the project.
 */
export function measureFlick(
  track: Track,
  stick: StickId,
  evidence: StickEvidence,
  mapping: StickMapping,
): FlickMeasure | null {
  const readings = track.sticks[stick];
  const dwells = settledDwells(evidence);
  if (readings === undefined || dwells.length === 0) return null;
  const rest = meanRest(dwells);
  const noise = pooledNoise(dwells);
  const band = bandOf(readings, noise);
  const flicks = flickReleases(track, stick, readings, rest).map((release) =>
    readFlick(readings, track.gaps, rest, band, release),
  );
  const read = flicks.filter((one) => one !== null);
  if (read.length === 0) return null;
  const counts = read.map(({ overshoot }) => overshoot);
  const shares = read.map(({ far, tilt }) => deflectionPast(mapping, readings, rest, far, tilt));
  const settling = read.map(({ settlingUs }) => settlingUs);
  return {
    count: read.length,
    unread: flicks.length - read.length,
    overshoot: { largest: Math.max(...shares), mean: mean(shares) },
    overshootCounts: { largest: Math.max(...counts), mean: mean(counts) },
    settlingUs: { p50: quantile(settling, 0.5), max: Math.max(...settling) },
    band,
    at: read.map(({ letGoUs }) => letGoUs),
  };
}

function bandOf({ fields }: StickTrack, noise: ReturnType<typeof pooledNoise>): Pair {
  return {
    x: settleLimit(fields.x) + NOISE_TIMES * (noise?.x ?? 0),
    y: settleLimit(fields.y) + NOISE_TIMES * (noise?.y ?? 0),
  };
}

/** The way past the rest as a deflection, against the direction of the tilt; never below 0. */
function deflectionPast(mapping: StickMapping, { fields }: StickTrack, rest: Pair, far: Pair, tilt: Pair): number {
  const [from, past, full] = [rest, far, tilt].map((point) => deflect(mapping, fields, point)) as [Pair, Pair, Pair];
  const way = { x: full.x - from.x, y: full.y - from.y };
  const length = Math.hypot(way.x, way.y);
  return Math.max(0, -((past.x - from.x) * way.x + (past.y - from.y) * way.y) / length);
}
