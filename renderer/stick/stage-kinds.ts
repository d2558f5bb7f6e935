/** The kinds of stage that a chain may hold: a name, what it does, a good one to begin with, and the fields to edit. */
import type { Stage } from '../../core/zones/chain.ts';

/** One number, choice or switch of a stage, by the path of its key. */
export interface StageField {
  readonly key: readonly string[];
  readonly says: string;
  readonly kind: 'percent' | 'number' | 'switch' | 'points' | 'sectors';
  readonly choices?: readonly { readonly value: string; readonly says: string }[];
}

export interface StageKind {
  readonly id: string;
  readonly says: string;
  readonly does: string;
  readonly first: Stage;
  readonly fields: readonly StageField[];
}

const inner: StageField = { key: ['inner'], says: 'inner', kind: 'percent' };
const outer: StageField = { key: ['outer'], says: 'outer', kind: 'percent' };
const maps: StageField = {
  key: ['map'],
  says: 'map',
  kind: 'switch',
  choices: ['elliptical', 'squircular', 'radial'].map((value) => ({ value, says: value })),
};

export const STAGE_KINDS: readonly StageKind[] = [
  {
    id: 'axial',
    says: 'axial zone',
    does: 'Each axis alone: nothing up to the inner edge; rescaled, it grows from there to the outer edge.',
    first: { zone: 'axial', inner: 0.1, outer: 1, rescale: true },
    fields: [
      inner,
      outer,
      {
        key: ['rescale'],
        says: 'beyond it',
        kind: 'switch',
        choices: [
          { value: 'true', says: 'rescaled' },
          { value: 'false', says: 'unchanged' },
        ],
      },
    ],
  },
  {
    id: 'radial',
    says: 'radial zone, cut',
    does: 'Nothing inside a circle; beyond it the deflection as it is, so that it jumps at the edge.',
    first: { zone: 'radial', inner: 0.1 },
    fields: [inner],
  },
  {
    id: 'scaledRadial',
    says: 'scaled radial zone',
    does: 'Nothing inside a circle; from its edge the magnitude grows from 0 to full at the outer edge.',
    first: { zone: 'scaledRadial', inner: 0.1, outer: 1 },
    fields: [inner, outer],
  },
  {
    id: 'sector',
    says: 'zone by sectors',
    does: 'A scaled radial zone whose edges depend on the direction: N equal sectors, the first about 0°.',
    first: { zone: 'sector', blend: true, sectors: Array.from({ length: 4 }, () => ({ inner: 0.1, outer: 1 })) },
    fields: [
      {
        key: ['blend'],
        says: 'between sectors',
        kind: 'switch',
        choices: [
          { value: 'true', says: 'blended' },
          { value: 'false', says: 'stepped' },
        ],
      },
      { key: ['sectors'], says: 'sectors: inner outer, in %, one a line', kind: 'sectors' },
    ],
  },
  {
    id: 'slopedAxial',
    says: 'sloped axial zone',
    does: 'Each axis alone, and the wider the further the other axis is pushed: keeps a push straight.',
    first: { zone: 'slopedAxial', inner: 0.05, slope: 0.1 },
    fields: [inner, { key: ['slope'], says: 'slope', kind: 'number' }],
  },
  {
    id: 'minimumOutput',
    says: 'minimum output',
    does: 'Anything at all begins at this output: takes back a zone that comes later.',
    first: { minimumOutput: 0.08 },
    fields: [{ key: ['minimumOutput'], says: 'minimum', kind: 'percent' }],
  },
  {
    id: 'exponent',
    says: 'curve by exponent',
    does: 'The magnitude to a power: above 1 finer near the middle.',
    first: { curve: { exponent: 1.6 } },
    fields: [{ key: ['curve', 'exponent'], says: 'exponent', kind: 'number' }],
  },
  {
    id: 'points',
    says: 'curve by points',
    does: 'The magnitude along straight lines through points: input, output.',
    first: {
      curve: {
        points: [
          [0, 0],
          [0.5, 0.3],
          [1, 1],
        ],
      },
    },
    fields: [{ key: ['curve', 'points'], says: 'points: input output, in %, one a line', kind: 'points' }],
  },
  {
    id: 'limit',
    says: 'limit',
    does: 'Nothing beyond full: each axis alone, or the magnitude.',
    first: { limit: 'radial' },
    fields: [
      {
        key: ['limit'],
        says: 'by',
        kind: 'switch',
        choices: [
          { value: 'axis', says: 'axis' },
          { value: 'radial', says: 'magnitude' },
        ],
      },
    ],
  },
  {
    id: 'discToSquare',
    says: 'disc to square',
    does: 'Stretches the round plane so that its corners are reached.',
    first: { shape: 'discToSquare', map: 'elliptical' },
    fields: [maps],
  },
  {
    id: 'squareToDisc',
    says: 'square to disc',
    does: 'Pulls the corners of a square plane into the circle.',
    first: { shape: 'squareToDisc', map: 'elliptical' },
    fields: [maps],
  },
  {
    id: 'quantise',
    says: 'quantising',
    does: 'Rounds each axis to so many bits; even levels have no zero, which alone leaks.',
    first: { quantise: { bits: 8, levels: 'signed' } },
    fields: [
      { key: ['quantise', 'bits'], says: 'bits', kind: 'number' },
      {
        key: ['quantise', 'levels'],
        says: 'levels',
        kind: 'switch',
        choices: [
          { value: 'signed', says: 'signed' },
          { value: 'even', says: 'even' },
        ],
      },
    ],
  },
  {
    id: 'digital',
    says: 'digital ways',
    does: 'Full output in one of four or eight ways beyond a threshold.',
    first: { digital: { ways: 8, threshold: 0.5 } },
    fields: [
      {
        key: ['digital', 'ways'],
        says: 'ways',
        kind: 'switch',
        choices: [
          { value: '4', says: '4' },
          { value: '8', says: '8' },
        ],
      },
      { key: ['digital', 'threshold'], says: 'threshold', kind: 'percent' },
    ],
  },
];

/** The kind of a stage. */
export function kindOf(stage: Stage): StageKind {
  const id =
    'zone' in stage
      ? stage.zone
      : 'shape' in stage
        ? stage.shape
        : 'curve' in stage
          ? 'exponent' in stage.curve
            ? 'exponent'
            : 'points'
          : Object.keys(stage).find((key) => key !== 'off');
  const kind = STAGE_KINDS.find((one) => one.id === id) ?? STAGE_KINDS[0];
  if (kind === undefined) throw new RangeError('There is a kind for every stage.');
  return kind;
}
