/** What a log as a whole says of its reports: rate, intervals as received here, losses. */
import { isEnded } from '../capture/evidence/log-whole.ts';
import type { Track } from '../capture/evidence/track.ts';
import type { Stage } from '../log/header.ts';
import { takeQuantiles } from '../numeric/quantile.ts';
import type { Domain } from '../pad/stick.ts';

/** The `log` object of what `measure` prints. */
export interface LogMeasure {
  /** From the first report to the last. */
  readonly durationUs: number;
  readonly reports: number;
  /** Null unless the log counts every loss: it is never guessed. */
  readonly lost: number | null;
  /** Mean over the whole duration, gaps included; null with fewer than two reports. */
  readonly rateHz: number | null;
  readonly domain: Domain;
  readonly stage: Stage | null;
  /** Quantiles (type 7) of the times between reports; null with fewer than two. */
  readonly interval: {
    readonly p50Us: number;
    readonly p95Us: number;
    readonly p99Us: number;
    readonly maxUs: number;
  } | null;
  /** Reports equal to the one before, byte for byte. */
  readonly duplicates: number;
  /** Lines that no version writes and that were left out. */
  readonly damaged: number;
  /** Whether the recording was ended in order; null where the log cannot tell. */
  readonly ended: boolean | null;
  /** Reports that should carry a reading and could not be decoded, with the sentence of the first; null with none. */
  readonly unread: { readonly reports: number; readonly says: string | null } | null;
}

/** The domain is `sensor` where the log says so and a profile decodes it: neither alone may claim it. */
export function measureLog(track: Track): LogMeasure {
  const times = track.reportTimes;
  const durationUs = (times.at(-1) ?? 0) - (times[0] ?? 0);
  return {
    durationUs,
    reports: times.length,
    lost: countLost(track.gaps),
    rateHz: durationUs > 0 ? ((times.length - 1) * 1e6) / durationUs : null,
    domain: track.header.domain === 'sensor' ? track.layout.domain : 'reported',
    stage: track.header.stage,
    interval: intervals(times),
    duplicates: track.duplicates,
    damaged: track.damaged?.lines ?? 0,
    ended: isEnded(track),
    unread: sayUnread(track.unread),
  };
}

function sayUnread(unread: Track['unread']): LogMeasure['unread'] {
  if (unread === undefined || unread.reports === 0) return null;
  return { reports: unread.reports, says: unread.first?.says ?? null };
}

function countLost(gaps: Track['gaps']): number | null {
  if (gaps.length === 0) return null;
  let sum = 0;
  for (const { lost } of gaps) {
    if (lost === null) return null;
    sum += lost;
  }
  return sum;
}

function intervals(times: Float64Array): LogMeasure['interval'] {
  if (times.length < 2) return null;
  const between = new Float64Array(times.length - 1);
  for (let i = 0; i < between.length; i += 1) between[i] = (times[i + 1] ?? 0) - (times[i] ?? 0);
  const [p50Us = 0, p95Us = 0, p99Us = 0, maxUs = 0] = takeQuantiles(between, [0.5, 0.95, 0.99, 1]);
  return { p50Us, p95Us, p99Us, maxUs };
}
