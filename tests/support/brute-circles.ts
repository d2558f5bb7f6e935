/** The reference circles by trying every set of contacts: slow, plain, and a judge of the quick ways. */
import { circleOnDiameter, circleThrough } from '../../core/geometry/circle-through.ts';
import { bandAt, type Band } from '../../core/geometry/radial-band.ts';
import { pairsOf } from './point-sets.ts';

function twos<T>(items: readonly T[]): (readonly [T, T])[] {
  return items.flatMap((a, i) => items.slice(i + 1).map((b) => [a, b] as const));
}

function threes<T>(items: readonly T[]): (readonly [T, T, T])[] {
  return items.flatMap((a, i) => twos(items.slice(i + 1)).map(([b, c]) => [a, b, c] as const));
}

function circlesOf(points: readonly number[]): { x: number; y: number }[] {
  const pairs = pairsOf(points);
  const two = twos(pairs).map(([[ax, ay], [bx, by]]) => circleOnDiameter(ax, ay, bx, by));
  const three = threes(pairs).map(([[ax, ay], [bx, by], [cx, cy]]) => circleThrough(ax, ay, bx, by, cx, cy));
  return [...two, ...three.filter((circle) => circle !== null)];
}

function widths(points: readonly number[], centres: readonly { x: number; y: number }[]): Band[] {
  const flat = Float64Array.from(points);
  return centres.map(({ x, y }) => bandAt({ outer: flat, inner: flat }, x, y));
}

/** Radius of the smallest circle on two or three points that holds all. */
export function bruteEnclosingRadius(points: readonly number[]): number {
  if (points.length === 2) return 0;
  return Math.min(...widths(points, circlesOf(points)).map((band) => band.greatest));
}

/** Radius of the largest empty circle on two or three points, centre where `allows` says. */
export function bruteInscribedRadius(points: readonly number[], allows: (x: number, y: number) => boolean): number {
  const centres = circlesOf(points).filter(({ x, y }) => allows(x, y));
  return Math.max(...widths(points, centres).map((band) => band.least));
}

/** Least width of a ring whose centre is as far from two points and as far from two others. */
export function bruteZoneWidth(points: readonly number[], allows: (x: number, y: number) => boolean): number {
  const bisectors = twos(pairsOf(points)).map(([[ax, ay], [bx, by]]) => ({
    x: bx - ax,
    y: by - ay,
    level: (bx * bx - ax * ax + by * by - ay * ay) / 2,
  }));
  const crossings = twos(bisectors)
    .map(([one, other]) => {
      const determinant = one.x * other.y - other.x * one.y;
      return {
        x: (one.level * other.y - other.level * one.y) / determinant,
        y: (one.x * other.level - other.x * one.level) / determinant,
      };
    })
    .filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y) && allows(x, y));
  return Math.min(...widths(points, crossings).map((band) => band.width));
}
