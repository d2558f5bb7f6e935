/** A chain as a map of the plane: the output at every deflection. */
import type { ChainFunction } from './run-chain.ts';

/**
 * Output magnitudes of `size` × `size` deflections from −extent to +extent, row by row from the top, each at the middle of its
 * cell. Nothing is limited before the chain.
 */
export function zoneMap(run: ChainFunction, size: number, extent: number): Float32Array {
  const map = new Float32Array(size * size);
  const out = new Float64Array(2);
  const cell = (2 * extent) / size;
  let place = 0;
  for (let row = 0; row < size; row += 1) {
    const y = extent - (row + 0.5) * cell;
    for (let column = 0; column < size; column += 1) {
      run((column + 0.5) * cell - extent, y, out);
      const [outX = 0, outY = 0] = out;
      map[place] = Math.sqrt(outX * outX + outY * outY);
      place += 1;
    }
  }
  return map;
}
