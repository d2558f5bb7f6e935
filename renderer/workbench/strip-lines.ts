/** Geometry of a strip: raw counts against time, x and y on one scale. */
import { linearScale } from '../../core/plot/linear-scale.ts';
import { count } from '../../core/plot/number-text.ts';
import { numberCell, type NumberCell, type Table } from '../kit/figures/table.ts';
import { nearest } from '../stick/sample-state.svelte.ts';

export interface Strip {
  readonly fromUs: number;
  readonly toUs: number;
  /** Microseconds and raw counts in turn. */
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** A stretch of the log, both ends included. */
export interface Stretch {
  readonly startUs: number;
  readonly endUs: number;
}

/** Room around a stretch, as a share of it, and at least so long. */
const AROUND_SHARE = 0.5;
const AROUND_LEAST_US = 100_000;
/** Rows of the table twin. */
const ROWS = 40;

/** The stretch of the log that is shown for a span. */
export function stretchFor({ startUs, endUs }: Stretch) {
  const around = Math.max(AROUND_LEAST_US, AROUND_SHARE * (endUs - startUs));
  return { fromUs: Math.max(0, startUs - around), toUs: endUs + around };
}

export function stripLines({ fromUs, toUs, x, y }: Strip, width: number, height: number) {
  const counts = [...x, ...y].filter((_, index) => index % 2 === 1);
  const [least, greatest] = [Math.min(...counts), Math.max(...counts)];
  const across = linearScale([fromUs, toUs], [0, width]);
  const up = linearScale([least - 1, greatest + 1], [height - 2, 2]);
  const path = (points: readonly number[]): string => {
    let d = '';
    for (let i = 0; i + 1 < points.length; i += 2)
      d += `${i === 0 ? 'M' : 'L'}${across.at(points[i] ?? 0).toFixed(1)} ${up.at(points[i + 1] ?? 0).toFixed(1)}`;
    return d;
  };
  return { across, up, x: path(x), y: path(y), least, greatest };
}

/** Time and counts, every so many points; the row that holds the selected sample is marked. */
export function stripTable({ x, y }: Strip, sample: number | null = null): Table {
  const pairs = Math.min(x.length, y.length) / 2;
  const stride = Math.max(1, Math.ceil(pairs / ROWS));
  const at = (points: readonly number[], t: number): NumberCell => {
    let value = points[1];
    for (let i = 0; i + 1 < points.length && (points[i] ?? 0) <= t; i += 2) value = points[i + 1];
    return numberCell(value, count);
  };
  const rows = Array.from({ length: Math.ceil(pairs / stride) }, (_, row) => {
    const t = x[2 * row * stride] ?? 0;
    return [numberCell(t / 1e6, (seconds) => seconds.toFixed(3)), at(x, t), at(y, t)];
  });
  const before = x.filter((time, index) => index % 2 === 0 && sample !== null && time <= sample).length;
  const selected =
    sample === null || before === 0 ? null : Math.min(rows.length - 1, Math.floor((before - 1) / stride));
  return { caption: 'Strip, raw counts', heads: ['seconds of the log', 'x', 'y'], rows, selected };
}

/** Place of the stretch that a time lies in, or else of the nearest one; 0 without any. */
export function nearestStretch(stretches: readonly Stretch[], atUs: number): number {
  const away = stretches.map(({ startUs, endUs }) => Math.max(startUs - atUs, atUs - endUs, 0));
  return Math.max(0, away.indexOf(Math.min(...away)));
}

/** Time of the reading nearest to a time; null where the strip has none. */
export function sampleNear({ x }: Strip, atUs: number): number | null {
  return nearest(x, atUs)?.atUs ?? null;
}

/** Where a key moves the sample: to a neighbouring reading, by a tenth of the readings, or to an end; null for any other key. */
export function sampleByKey({ x }: Strip, key: string, from: number): number | null {
  const times = x.filter((_, index) => index % 2 === 0);
  const near = nearest(x, from);
  if (near === null) return null;
  const place = times.indexOf(near.atUs);
  const page = Math.max(1, Math.round(times.length / 10));
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: 1,
    ArrowUp: 1,
    ArrowLeft: -1,
    ArrowDown: -1,
    PageUp: page,
    PageDown: -page,
    Home: -times.length,
    End: times.length,
  };
  const step = steps[key];
  return step === undefined ? null : (times[Math.min(times.length - 1, Math.max(0, place + step))] ?? null);
}
