/** A chain as a map of the plane: the output at every deflection. */
import type { Chain, Stage } from './chain.ts';
import { compileChain, type ChainFunction } from './run-chain.ts';

/**
 * Output magnitudes of `size` × `size` deflections from −extent to +extent, row by row from the top, each at the middle of its
 * cell. Nothing is limited before the chain. Where no stage tells left from right, up from down or x from y, an eighth of the
 * plane is computed and mirrored.
 */
export function zoneMap(chain: Pick<Chain, 'stages'>, size: number, extent: number): Float32Array {
  const outputAt = cellOutput(compileChain(chain), size, extent);
  const map = new Float32Array(size * size);
  if (chain.stages.every(isMirrored)) fillMirrored(map, size, outputAt);
  else
    for (let row = 0; row < size; row += 1)
      for (let column = 0; column < size; column += 1) map[row * size + column] = outputAt(row, column);
  return map;
}

/** Every stage treats the eight mirror images of a deflection alike, but one whose sectors have settings of their own. */
function isMirrored(stage: Stage): boolean {
  return stage.off === true || !('zone' in stage && stage.zone === 'sector');
}

function cellOutput(run: ChainFunction, size: number, extent: number): (row: number, column: number) => number {
  const out = new Float64Array(2);
  const cell = (2 * extent) / size;
  return (row, column) => {
    run((column + 0.5) * cell - extent, extent - (row + 0.5) * cell, out);
    const [outX = 0, outY = 0] = out;
    return Math.sqrt(outX * outX + outY * outY);
  };
}

function fillMirrored(map: Float32Array, size: number, outputAt: (row: number, column: number) => number): void {
  const last = size - 1;
  const half = Math.ceil(size / 2);
  for (let a = 0; a < half; a += 1)
    for (let b = a; b < half; b += 1) {
      const value = outputAt(a, b);
      map[a * size + b] = value;
      map[a * size + last - b] = value;
      map[(last - a) * size + b] = value;
      map[(last - a) * size + last - b] = value;
      map[b * size + a] = value;
      map[b * size + last - a] = value;
      map[(last - b) * size + a] = value;
      map[(last - b) * size + last - a] = value;
    }
}
