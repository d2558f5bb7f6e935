import { expect, it } from 'vitest';
import { runStages } from '../../../support/run-stages.ts';

it('the sloped zone widens with the other axis, both judged on what came in', () => {
  const stage = { zone: 'slopedAxial', inner: 0.05, slope: 0.1 } as const;
  expect(runStages([stage], 0.14, 1)).toEqual({ x: 0, y: 1 });
  expect(runStages([stage], 0.16, 1)).toEqual({ x: 0.16, y: 1 });
  expect(runStages([stage], 0.06, 0)).toEqual({ x: 0.06, y: 0 });
  expect(runStages([stage], -0.054, -0.052)).toEqual({ x: 0, y: 0 });
});
