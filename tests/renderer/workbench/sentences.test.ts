import { describe, expect, it } from 'vitest';
import { directionParts } from '../../../renderer/workbench/direction-sentence.ts';
import { edgeName } from '../../../renderer/workbench/edge-name.ts';
import { predictionSentence } from '../../../renderer/workbench/prediction-sentence.ts';
import { makeEvidence } from '../../support/make-evidence.ts';
import { mapping, oneRelease, standUnder } from '../support/bench-stick.ts';

describe('directionParts', () => {
  it('gives reach and onset under each mapping', () => {
    const now = standUnder(oneRelease());
    const parts = directionParts([now, { ...now, tone: 'proposed' }], 0);
    expect(parts[0]).toBe('reach now 1.030 · proposed 1.030');
    expect(parts[1]).toBe('onset now 5.0\u202f% · proposed 5.0\u202f%');
  });

  it('writes a reach at the limit of its field as at least', () => {
    expect(directionParts([standUnder(oneRelease())], 0, true)[0]).toBe('reach now ≥ 1.030');
  });

  it('says so where no reach was measured', () => {
    expect(directionParts([standUnder(oneRelease())], 105)[0]).toBe('no reach measured');
  });
});

describe('predictionSentence', () => {
  const proposal = { mapping, aim: 'full-reach', centreBy: 'mean', guard: 0.01, reasons: [] } as const;

  it('counts full output over the covered directions and names the weakest', () => {
    const proposed = { ...standUnder(oneRelease()), tone: 'proposed' } as const;
    const says = predictionSentence({ ...proposal, reasons: [], hides: null }, [proposed]);
    expect(says).toMatch(/^Predicted: full output in \d+ of 69 covered directions, least reach 0\.970 at 180° left, /);
  });

  it('predicts nothing without covered directions', () => {
    const bare = {
      ...standUnder(makeEvidence({ dwells: [{ point: { x: 2000, y: 2000 } }] })),
      tone: 'proposed',
    } as const;
    expect(predictionSentence({ ...proposal, reasons: [], hides: null }, [bare])).toBe(
      'Without covered directions nothing can be predicted.',
    );
  });
});

describe('edgeName', () => {
  it('writes the numbers of a mapping in words and leaves others as they are', () => {
    expect(['x.min', 'y.centre', 'x.max', 'guard'].map(edgeName)).toEqual([
      'x minimum',
      'y centre',
      'x maximum',
      'guard',
    ]);
  });
});
