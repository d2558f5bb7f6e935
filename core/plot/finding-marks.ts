/** Where the evidence of a finding lies, marked over the figures of the Workbench. */
import { directionStep, runsOf } from '../geometry/directions.ts';
import type { StickFields } from '../pad/stick.ts';
import { unrolledSpans } from './coverage-stretches.ts';
import type { Mark } from './figure.ts';
import { line, polyline } from './marks.ts';
import type { PlaneFigure } from './plane-figure.ts';
import type { ProfileFigure } from './profile-figure.ts';
import type { RailsFigure } from './rails-figure.ts';

const HALF = directionStep / 2;

/** A stretch of raw counts of one axis, both ends included. */
export interface CountStretch {
  readonly axis: 'x' | 'y';
  readonly from: number;
  readonly to: number;
}

/** A bar with feet over each stretch of the directions, just above the axis of directions. */
export function profileEvidence(figure: ProfileFigure, directions: readonly number[], letter: number): Mark[] {
  const y = figure.bottom - letter * 0.5;
  return runsOf(directions)
    .flatMap(unrolledSpans)
    .flatMap(([from, to]) => {
      const [start, end] = [figure.direction.at(from), figure.direction.at(to)];
      return [
        line('evidence', null, start, y, end, y),
        line('evidence', null, start, y, start, figure.bottom),
        line('evidence', null, end, y, end, figure.bottom),
      ];
    });
}

/** An arc just outside of the gate over each stretch of the directions, at the reach of `radius` counts. */
export function planeEvidence(figure: PlaneFigure, directions: readonly number[], radius: number): Mark[] {
  const { about, fields } = figure;
  return runsOf(directions).map(({ first, last }) => {
    const end = last < first ? last + 360 : last;
    const points: number[] = [];
    for (let angle = first - HALF; angle <= end + HALF; angle += HALF) {
      const turn = (angle * Math.PI) / 180;
      points.push(
        figure.x.at(about.x + fields.x.up * radius * Math.cos(turn)),
        figure.y.at(about.y + fields.y.up * radius * Math.sin(turn)),
      );
    }
    return polyline('evidence', null, points);
  });
}

/** A bar with feet below each stretch of counts, wide enough to be seen. */
export function railsEvidence(
  figure: RailsFigure,
  fields: StickFields,
  counts: readonly CountStretch[],
  letter: number,
): Mark[] {
  return counts.flatMap(({ axis, from, to }) => {
    const scale = figure[axis];
    const y = (axis === 'x' ? figure.xAt : figure.yAt) + letter * 0.8;
    const inside = (count: number): number =>
      scale.at(Math.min(Math.max(count, fields[axis].minimum), fields[axis].maximum));
    const middle = (inside(from) + inside(to)) / 2;
    const half = Math.max(letter * 0.2, Math.abs(inside(to) - inside(from)) / 2);
    return [
      line('evidence', null, middle - half, y, middle + half, y),
      line('evidence', null, middle - half, y - letter * 0.4, middle - half, y),
      line('evidence', null, middle + half, y - letter * 0.4, middle + half, y),
    ];
  });
}
