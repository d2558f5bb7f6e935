/** Geometry of the strip of a finding: raw counts against time, x and y on one scale. */
import { linearScale } from '../../../core/plot/linear-scale.ts';
import { count } from '../../../core/plot/number-text.ts';
import type { Table } from '../../figures/table.ts';

export interface Strip {
  readonly fromUs: number;
  readonly toUs: number;
  /** Microseconds and raw counts in turn. */
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Room around the span of a finding, as a share of it, and at least so long. */
const AROUND_SHARE = 0.5;
const AROUND_LEAST_US = 100_000;
/** Rows of the table twin. */
const ROWS = 40;

/** The stretch of the log that is shown for a span. */
export function stretchFor({ startUs, endUs }: { readonly startUs: number; readonly endUs: number }) {
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
  return { across, x: path(x), y: path(y), least, greatest };
}

/** Time and counts, every so many points. */
export function stripTable({ x, y }: Strip): Table {
  const pairs = Math.min(x.length, y.length) / 2;
  const stride = Math.max(1, Math.ceil(pairs / ROWS));
  const at = (points: readonly number[], t: number): string => {
    let value = points[1];
    for (let i = 0; i + 1 < points.length && (points[i] ?? 0) <= t; i += 2) value = points[i + 1];
    return value === undefined ? '–' : count(value);
  };
  const rows = Array.from({ length: Math.ceil(pairs / stride) }, (_, row) => {
    const t = x[2 * row * stride] ?? 0;
    return [(t / 1e6).toFixed(3), at(x, t), at(y, t)];
  });
  return { caption: 'Strip of the finding, raw counts', heads: ['seconds of the log', 'x', 'y'], rows, selected: null };
}
