/** Lines of equal height on a grid, by marching squares. */

/**
 * `heights`: size × size, row by row; `level`: the height looked for. Segments in cells of the grid, x0, y0, x1, y1 with NaN, NaN
 * between them; cell middles are whole numbers. Where a cell is a saddle its middle decides.
 */
export function contourSegments(heights: ArrayLike<number>, size: number, level: number): number[] {
  const segments: number[] = [];
  const at = (row: number, column: number): number => (heights[row * size + column] ?? 0) - level;
  for (let row = 0; row + 1 < size; row += 1)
    for (let column = 0; column + 1 < size; column += 1) {
      const [a, b, c, d] = [
        at(row, column),
        at(row, column + 1),
        at(row + 1, column + 1),
        at(row + 1, column),
      ] as const;
      const sides = (a > 0 ? 1 : 0) | (b > 0 ? 2 : 0) | (c > 0 ? 4 : 0) | (d > 0 ? 8 : 0);
      if (sides === 0 || sides === 15) continue;
      const top = [column + cut(a, b), row] as const;
      const right = [column + 1, row + cut(b, c)] as const;
      const bottom = [column + cut(d, c), row + 1] as const;
      const left = [column, row + cut(a, d)] as const;
      for (const [from, to] of pairs(sides, a + b + c + d > 0, top, right, bottom, left))
        segments.push(...from, ...to, Number.NaN, Number.NaN);
    }
  return segments;
}

type Point = readonly [number, number];

function cut(from: number, to: number): number {
  return from === to ? 0.5 : from / (from - to);
}

function pairs(
  sides: number,
  isMiddleHigh: boolean,
  top: Point,
  right: Point,
  bottom: Point,
  left: Point,
): readonly (readonly [Point, Point])[] {
  switch (sides) {
    case 1:
    case 14:
      return [[left, top]];
    case 2:
    case 13:
      return [[top, right]];
    case 3:
    case 12:
      return [[left, right]];
    case 4:
    case 11:
      return [[right, bottom]];
    case 6:
    case 9:
      return [[top, bottom]];
    case 7:
    case 8:
      return [[left, bottom]];
    case 5:
      return isMiddleHigh
        ? [
            [left, bottom],
            [top, right],
          ]
        : [
            [left, top],
            [right, bottom],
          ];
    default:
      return isMiddleHigh
        ? [
            [left, top],
            [right, bottom],
          ]
        : [
            [left, bottom],
            [top, right],
          ];
  }
}
