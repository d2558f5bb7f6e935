/** The checklist of inputs in words. */
import { inputWords, listInputs } from '../../../core/capture/guide/inputs-list.ts';
import type { PadLayout } from '../../../core/pad/layout.ts';
import { count } from '../../../core/plot/number-text.ts';
import type { Table } from '../../kit/figures/table.ts';
import type { SurveyRunState } from '../survey-words.ts';

export type InputRow = NonNullable<SurveyRunState['inputs']>[number];

/** How many controls are still open, e.g. for the note beside the title. */
export function openRows(rows: readonly InputRow[]): string {
  const open = rows.filter(({ missing }) => missing !== null).length;
  if (rows.length === 0) return 'every button, hat direction and trigger';
  return open === 0 ? `all ${rows.length} seen` : `${open} of ${rows.length} still missing`;
}

export function inputsTable(rows: readonly InputRow[]): Table {
  return {
    caption: 'Every control of the pad, and what is missing',
    heads: [
      'control',
      'pressed',
      'released',
      { says: 'bounce ms', title: 'longest bounce of one press or release, as received here' },
      { says: 'seen, of its field', title: 'raw counts that a trigger was seen between, of its field' },
      { says: 'still missing', words: true, tone: 'soft' },
    ],
    rows: rows.map((row) => [
      row.says,
      row.pressed ? 'seen' : 'not yet',
      row.released ? 'seen' : 'not yet',
      row.bounceMs === null ? '–' : row.bounceMs.toFixed(1),
      row.field === null ? '' : `${extentWords(row.extent)} ${fieldWords(row.field)}`,
      row.missing ?? 'nothing',
    ]),
    selected: null,
  };
}

/** E.g. `12 … 250`; a dash where the trigger was never pulled. */
export function extentWords(extent: InputRow['extent']): string {
  return extent === null ? '–' : `${count(extent.least)} … ${count(extent.greatest)}`;
}

/** E.g. `of 0 … 255`. */
export function fieldWords({ minimum, maximum }: NonNullable<InputRow['field']>): string {
  return `of ${count(minimum)} … ${count(maximum)}`;
}

/** The checklist before anything was seen. */
export function unseenRows(layout: PadLayout): InputRow[] {
  return listInputs(layout).map((control) => ({
    says: inputWords(control),
    down: false,
    pressed: false,
    released: false,
    bounceMs: null,
    extent: null,
    field: control.kind === 'trigger' ? { minimum: control.minimum, maximum: control.maximum } : null,
    missing: control.kind === 'trigger' ? 'pull all the way' : 'press',
  }));
}
