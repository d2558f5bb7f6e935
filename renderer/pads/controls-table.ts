/** The worklist of controls as a table. */
import type { Table } from '../kit/figures/table.ts';
import type { ControlRow } from './control-watch.ts';

export function controlsTable(rows: readonly ControlRow[]): Table {
  return {
    caption: 'Every control, and what was seen of it',
    heads: [
      'control',
      'pressed',
      'released',
      { says: 'bounce ms', title: 'longest bounce of one press or release, as received here' },
      { says: 'now', width: '3.5em' },
    ],
    rows: rows.map(({ says, pressed, released, bounceMillis, value, down }) => [
      says,
      pressed ? 'seen' : 'not yet',
      released ? 'seen' : 'not yet',
      bounceMillis === null ? '–' : bounceMillis.toFixed(1),
      value === null ? (down ? 'down' : '') : String(value),
    ]),
    selected: null,
  };
}
