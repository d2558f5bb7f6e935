/** Numbers that an image is searched for, many sets at once, so that every byte is read once for all of them. */
import type { AxisMapping, PadMapping } from '../mapping/mapping.ts';
import { STICKS, type StickId } from '../pad/stick.ts';

/** One stick of one set, in one of the two orders of its axes. */
export interface Sought {
  /** Index of the set. */
  readonly set: number;
  readonly stick: StickId;
  /** Which axis stands first. */
  readonly axes: 'xy' | 'yx';
  readonly first: SoughtAxis;
  readonly second: SoughtAxis;
}

/** An axis as edges and as spans. */
export interface SoughtAxis {
  readonly centre: number;
  readonly edges: { readonly low: number; readonly high: number };
  readonly spans: { readonly low: number; readonly high: number };
  /** How far off a number may be, counts. */
  readonly near: number;
}

/** Three numbers as they stand: the centre, and edges or spans. */
export interface ReadAxis {
  readonly low: number;
  readonly centre: number;
  readonly high: number;
}

/** What is sought, by where its first numbers lie: of thousands only a few can be near numbers that were read. */
export interface SoughtGrid {
  /** No number above this is near any. */
  readonly highest: number;
  readonly cellSize: number;
  readonly edges: readonly (readonly Sought[] | undefined)[];
  readonly spans: readonly (readonly Sought[] | undefined)[];
}

/** A number may differ from the measured one by this share of the measured span: the stored part was another one. */
const NEAR_SHARE = 0.15;
/** In each of four directions: both centres and both lows. */
const CELLS = 12;
const NONE: readonly Sought[] = [];

/** All sets have the tolerance of the first, which is the measured one: what is compared must be equally easy to hit. */
export function gridOf(sets: readonly PadMapping[]): SoughtGrid {
  const [measured = {}] = sets;
  const sought = sets.flatMap((set, index) => STICKS.flatMap((stick) => soughtOf(set, index, stick, measured)));
  const highest = sought.reduce((most, { first: { edges, near } }) => Math.max(most, edges.high + 2 * near), 0);
  const cellSize = (highest + 1) / CELLS;
  return {
    highest,
    cellSize,
    edges: cellsOf(sought, cellSize, ({ edges }) => edges.low),
    spans: cellsOf(sought, cellSize, ({ spans }) => spans.low),
  };
}

export function soughtNear(grid: SoughtGrid, isEdges: boolean, a: ReadAxis, b: ReadAxis): readonly Sought[] {
  const cell = (number: number): number => Math.floor(number / grid.cellSize);
  const index = cellIndex(cell(a.centre), cell(b.centre), cell(a.low), cell(b.low));
  return (isEdges ? grid.edges : grid.spans)[index] ?? NONE;
}

function cellIndex(centreA: number, centreB: number, lowA: number, lowB: number): number {
  return ((centreA * CELLS + centreB) * CELLS + lowA) * CELLS + lowB;
}

function cellsOf(
  sought: readonly Sought[],
  cellSize: number,
  lowOf: (axis: SoughtAxis) => number,
): (Sought[] | undefined)[] {
  const cells = Array.from({ length: CELLS ** 4 }, (): Sought[] | undefined => undefined);
  for (const one of sought) {
    const { first, second } = one;
    const [lowsA, lowsB] = [cellsNear(lowOf(first), first, cellSize), cellsNear(lowOf(second), second, cellSize)];
    for (const centreA of cellsNear(first.centre, first, cellSize))
      for (const centreB of cellsNear(second.centre, second, cellSize))
        for (const lowA of lowsA)
          for (const lowB of lowsB) (cells[cellIndex(centreA, centreB, lowA, lowB)] ??= []).push(one);
  }
  return cells;
}

function soughtOf(set: PadMapping, index: number, stick: StickId, measured: PadMapping): Sought[] {
  const [wanted, own] = [set[stick], measured[stick]];
  if (wanted === undefined || own === undefined) return [];
  const [x, y] = [soughtAxis(wanted.x, own.x), soughtAxis(wanted.y, own.y)];
  return [
    { set: index, stick, axes: 'xy', first: x, second: y },
    { set: index, stick, axes: 'yx', first: y, second: x },
  ];
}

function soughtAxis({ min, centre, max }: AxisMapping, measured: AxisMapping): SoughtAxis {
  return {
    centre,
    edges: { low: min, high: max },
    spans: { low: centre - min, high: max - centre },
    near: NEAR_SHARE * (measured.max - measured.min),
  };
}

function cellsNear(number: number, { near }: SoughtAxis, cellSize: number): number[] {
  const from = Math.max(0, Math.floor((number - near) / cellSize));
  const to = Math.min(CELLS - 1, Math.floor((number + near) / cellSize));
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => from + index);
}
