import { expect, it } from 'vitest';
import { drawTable } from '../../electron/shell/command-line/tables.ts';

it('stands columns under each other where letters are two cells wide or none', () => {
  const columns = [{ head: 'product' }, { head: 'rate', align: 'right' }, { head: 'state' }] as const;
  const drawn = drawTable(columns, [
    ['手柄', 250, 'open'],
    ['Pe\u0301rle', 1000, null],
  ]);
  expect(drawn).toBe(['product  rate  state', '手柄      250  open', 'Pe\u0301rle    1000  –'].join('\n'));
});
