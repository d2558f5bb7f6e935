import { describe, expect, it } from 'vitest';
import { parseChain } from '../../../core/zones/parse-chain.ts';

const head = { kind: 'stickwright-chain', version: 1, name: 'a chain', needs: null };
const every = [
  { zone: 'axial', inner: 0.1, outer: 1, rescale: true },
  { zone: 'axial', inner: 0.1 },
  { zone: 'radial', inner: 0.1 },
  { zone: 'scaledRadial', inner: 0.1, outer: 1 },
  { zone: 'scaledRadial', inner: 0 },
  { zone: 'sector', blend: true, sectors: [{ inner: 0.1, outer: 1 }] },
  { zone: 'slopedAxial', inner: 0.05, slope: 0.1 },
  { minimumOutput: 0.08 },
  { curve: { exponent: 1.6 } },
  {
    curve: {
      points: [
        [0, 0],
        [0.5, 0.3],
        [1, 1],
      ],
    },
  },
  { limit: 'axis' },
  { limit: 'radial', off: true },
  { shape: 'discToSquare', map: 'elliptical' },
  { shape: 'squareToDisc', map: 'squircular' },
  { quantise: { bits: 8, levels: 'signed' } },
  { digital: { ways: 8, threshold: 0.5 } },
];

function refusal(...stages: readonly unknown[]): string {
  const read = parseChain({ ...head, stages });
  return read.ok ? 'no refusal' : read.problem.says;
}

describe('parseChain', () => {
  it('reads every stage as it was written', () => {
    expect(parseChain({ ...head, stages: every })).toEqual({ ok: true, value: { ...head, stages: every } });
  });

  it('takes a chain without stages, without needs, and with keys of later versions', () => {
    const read = parseChain({ kind: head.kind, version: 1, name: 'bare', stages: [], source: 'own' });
    expect(read).toEqual({ ok: true, value: { ...head, name: 'bare', stages: [] } });
  });

  it.each<[string, unknown, string]>([
    ['an unknown zone', { zone: 'hexagonal', inner: 0.1 }, 'names the unknown zone "hexagonal"'],
    ['a zone that is a number', { zone: 4 }, 'names the unknown zone 4'],
    ['an unknown stage', { smooth: 3 }, 'is unknown (its keys: smooth)'],
    ['an empty stage', {}, 'is unknown'],
    ['no object', 7, 'is not an object'],
    ['inner above outer', { zone: 'scaledRadial', inner: 0.6, outer: 0.5 }, 'inner must be less than outer'],
    ['inner at outer', { zone: 'scaledRadial', inner: 0.5, outer: 0.5 }, 'inner must be less than outer'],
    ['inner at the outer that is not written', { zone: 'scaledRadial', inner: 1 }, 'inner must be less than outer'],
    ['inner above outer per axis', { zone: 'axial', inner: 0.6, outer: 0.5, rescale: true }, 'less than outer'],
    ['a negative inner', { zone: 'radial', inner: -0.1 }, 'inner is -0.1, it must be at least 0'],
    ['an outer beyond 1.5', { zone: 'scaledRadial', inner: 0.1, outer: 1.6 }, 'outer is 1.6, it must be at most 1.5'],
    ['NaN', { zone: 'radial', inner: Number.NaN }, 'inner is not a finite number'],
    ['infinity', { zone: 'scaledRadial', inner: 0, outer: Infinity }, 'outer is not a finite number'],
    ['a text', { zone: 'radial', inner: '0.1' }, 'inner must be a number'],
    ['nothing', { zone: 'radial' }, 'inner is missing'],
    ['a misspelt edge', { zone: 'scaledRadial', inner: 0.1, outre: 0.9 }, 'a key that is not known: outre'],
    ['two stages in one', { zone: 'radial', inner: 0.1, minimumOutput: 0.1 }, 'not known: minimumOutput'],
    ['no sectors', { zone: 'sector', blend: false, sectors: [] }, 'sectors has 0 entries, it must be at least 1'],
    [
      'too many sectors',
      { zone: 'sector', blend: false, sectors: Array(361).fill({ inner: 0, outer: 1 }) },
      'sectors has 361 entries, it must be at most 360',
    ],
    [
      'a bad sector',
      {
        zone: 'sector',
        blend: false,
        sectors: [
          { inner: 0, outer: 1 },
          { inner: 1, outer: 1 },
        ],
      },
      'sectors[1].inner must be less than outer',
    ],
    ['a negative slope', { zone: 'slopedAxial', inner: 0.1, slope: -1 }, 'slope is -1, it must be at least 0'],
    ['a minimum output of 1', { minimumOutput: 1 }, 'minimumOutput is 1, it must be less than 1'],
    ['an exponent of 0', { curve: { exponent: 0 } }, 'curve.exponent is 0, it must be more than 0'],
    [
      'points that go back',
      {
        curve: {
          points: [
            [0, 0],
            [0.5, 1],
            [0.5, 0],
          ],
        },
      },
      'curve.points must have first numbers that grow',
    ],
    ['an unknown limit', { limit: 'none' }, 'limit must be "axis" or "radial"'],
    ['an unknown map', { shape: 'discToSquare', map: 'conformal' }, 'map must be'],
    ['one bit', { quantise: { bits: 1, levels: 'signed' } }, 'quantise.bits is 1, it must be at least 2'],
    ['half a bit', { quantise: { bits: 8.5, levels: 'signed' } }, 'quantise.bits'],
    ['six ways', { digital: { ways: 6, threshold: 0.5 } }, 'digital.ways must be 4 or 8'],
    ['an off that is no switch', { limit: 'axis', off: 'yes' }, 'off must be a boolean'],
  ])('refuses %s and names the stage and the place', (_, stage, says) => {
    const whole = refusal({ limit: 'axis' }, stage);
    expect(whole).toMatch(/^Stage 2 of the chain/);
    expect(whole).toContain(says);
  });

  it.each<[unknown, string]>([
    [undefined, 'it is missing'],
    [{ ...head, stages: [], kind: 'stickwright-mapping' }, 'kind must be "stickwright-chain"'],
    [{ ...head, stages: [], version: 3 }, 'version must be 1'],
    [{ ...head, stages: 'none' }, 'stages must be an array'],
    [{ ...head, stages: [], needs: 0 }, 'needs is 0, it must be more than 0'],
    [{ ...head, stages: [], needs: Number.NaN }, 'needs is not a finite number'],
    [{ ...head }, 'stages is missing'],
  ])('refuses the file %o', (value, says) => {
    const read = parseChain(value);
    expect(read.ok ? '' : read.problem.says).toContain(says);
  });
});
