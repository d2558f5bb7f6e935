import { expect, it } from 'vitest';
import { confusionTable } from './confusion-table.ts';

it('counts what was named first of each fault, in columns that stand under each other', () => {
  const table = confusionTable([
    { fault: 'skew', answers: [{ named: ['skewed-part', 'short-range'] }, { named: [] }, { named: ['skewed-part'] }] },
    { fault: 'sound', answers: [{ named: [] }] },
  ]);
  expect(table.split('\n')).toEqual([
    String.raw`| true fault \ named first | nothing | skewed-part |`,
    '| ------------------------ | ------: | ----------: |',
    '| skew                     |       1 |           2 |',
    '| sound                    |       1 |             |',
  ]);
});
