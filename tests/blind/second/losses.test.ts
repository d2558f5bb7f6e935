import { expect, it } from 'vitest';
import type { Judged } from './judge-draw.ts';
import { Losses } from './losses.ts';

const draw = (verdict: string, isFaulty: boolean, slip: 'no-push' | null = null): Judged =>
  ({ verdict, wish: { faults: isFaulty ? [{ name: 'skew', size: 12 }] : [], slip } }) as unknown as Judged;

it('counts faulty parts that are kept and sound ones that are worked on, of 1,000 each, and no slips', () => {
  const losses = new Losses();
  losses.add([draw('keep', true), draw('replace', true), draw('undecided', true), draw('keep', true)]);
  losses.add([
    draw('keep', false),
    draw('recalibrate', false),
    draw('reseat', false),
    draw('replace', false, 'no-push'),
  ]);
  expect(losses.lines()).toEqual([
    'kept although faulty: 500.0 of 1,000 (2 of 4)',
    'reseated or replaced in vain: 333.3 of 1,000 (1 of 3)',
  ]);
});
