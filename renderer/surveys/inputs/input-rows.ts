/** The checklist of inputs in words. */
import { inputWords, listInputs } from '../../../core/capture/guide/inputs-list.ts';
import type { PadLayout } from '../../../core/pad/layout.ts';
import type { SurveyRunState } from '../survey-words.ts';

export type InputRow = NonNullable<SurveyRunState['inputs']>[number];

/** How many controls are still open, e.g. for the note beside the title. */
export function openRows(rows: readonly InputRow[]): string {
  const open = rows.filter(({ missing }) => missing !== null).length;
  if (rows.length === 0) return 'every button, hat direction and trigger';
  return open === 0 ? `all ${rows.length} seen` : `${open} of ${rows.length} still missing`;
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
