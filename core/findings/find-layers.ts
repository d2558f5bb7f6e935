/** Layers that disagree: the user's mapping and the factory's are not of the same stick. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

const EDGES = ['min', 'centre', 'max'] as const;

/** Measure: the largest difference of one stored number between the layers, in shares of the half travel; exact. Null with one layer. */
export function findLayers({ layers, stick, half }: Subject, limits: Limits): Finding | null {
  const { user, factory } = layers ?? { user: null, factory: null };
  if (user === null || factory === null) return null;
  const differences = (['x', 'y'] as const).flatMap((axis) =>
    EDGES.map((edge) => ({
      axis,
      edge,
      counts: user[axis][edge] - factory[axis][edge],
      share: Math.abs(user[axis][edge] - factory[axis][edge]) / half[axis],
    })),
  );
  const [worst] = differences.toSorted((a, b) => b.share - a.share);
  if (worst === undefined) return null;
  const { axis, edge, counts, share } = worst;
  const says = `The user layer's ${axis}.${edge} of the ${stick} stick is ${Math.abs(counts)} counts ${counts < 0 ? 'below' : 'above'} the factory layer's, ${percent(share)} of the half travel`;
  return makeFinding({
    id: 'layers-disagree',
    stick,
    value: share,
    u95: 0,
    limit: limits.layers,
    severity: 'caution',
    says: {
      fail: `${says}: the two are not of the same stick.`,
      pass: `Both layers of the ${stick} stick agree to ${percent(share)}.`,
      'cannot say': `${says}, just at the limit.`,
    },
    for: differences
      .filter((one) => one !== worst && one.share > limits.layers.value)
      .map((one) => `${one.axis}.${one.edge} differs by ${Math.abs(one.counts)} counts.`),
    against: ['A user layer is meant to differ a little: it was set on a worn stick perhaps, or in another way.'],
    causes: [
      'Only one layer was written after a repair',
      'The user calibrated a stick that was worn, or moved it meanwhile',
    ],
    next: 'Carry the layer that fits the stick now to the other one: a reset brings back the factory layer, whatever it holds.',
  });
}
