import { describe, it } from 'vitest';
import { meanDirection } from '../../core/geometry/mean-direction.ts';
import { expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

interface DirectionCase {
  readonly id: string;
  readonly source: string;
  readonly provenance: string;
  readonly degrees: number[];
  readonly weights?: number[];
  readonly published: { mean?: number; R?: number; rayleighZ?: number };
  readonly computed?: { mean: number; R: number };
}

const { cases } = readGolden('circular') as { cases: DirectionCase[] };

/** Half a unit of the last printed digit. */
function halfUnit(value: number): number {
  const decimals = String(value).split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals * (1 + 1e-9);
}

describe('mean directions', () => {
  it.each(cases)('$id, $source ($provenance)', ({ degrees, weights, published, computed }) => {
    const found = meanDirection(degrees, weights)!;
    if (computed !== undefined) {
      expectWithin(found.angle, computed.mean, 0.05);
      expectWithin(found.resultant, computed.R, 5e-6);
    }
    if (published.mean !== undefined) expectWithin(found.angle, published.mean, halfUnit(published.mean));
    // Rayleigh's z is n times the squared resultant.
    if (published.rayleighZ !== undefined)
      expectWithin(degrees.length * found.resultant ** 2, published.rayleighZ, halfUnit(published.rayleighZ));
    if (published.R !== undefined) expectWithin(found.resultant, published.R, halfUnit(published.R));
  });
});
