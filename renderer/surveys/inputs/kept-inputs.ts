/** The inputs that a kept survey or an imported log holds, as rows of the checklist. */
import { inputWords, type InputControl } from '../../../core/capture/guide/inputs-list.ts';
import type { InputsMeasure } from '../../../core/measure/inputs-measure.ts';
import { STICKS } from '../../../core/pad/stick.ts';
import type { InputRow } from './input-rows.ts';

/** Share of a trigger's field that counts as its full travel. Common practice. */
const FULL_TRAVEL = 0.9;

/** What was seen of each control; of a hat only the directions that were seen, for the log does not name the others. */
export function keptRows({ buttons, hat, triggers, clicks }: InputsMeasure): InputRow[] {
  return [
    ...buttons.map(({ usage, pressed, released, bounceMs }) => {
      const click = STICKS.find((stick) => clicks[stick] === usage) ?? null;
      const missing = !pressed ? 'press' : released ? null : 'let go';
      return rowOf({ kind: 'button', usage, click }, { pressed, released, bounceMs, missing });
    }),
    ...(hat ?? []).map((degrees) =>
      rowOf({ kind: 'hat', degrees }, { pressed: true, released: true, bounceMs: null, missing: null }),
    ),
    ...STICKS.flatMap((of) => {
      const seen = triggers[of];
      if (seen === undefined) return [];
      const { fieldMinimum: minimum, fieldMaximum: maximum } = seen;
      const share = (value: number): number => (value - minimum) / (maximum - minimum);
      const [pressed, released] = [share(seen.max) >= FULL_TRAVEL, share(seen.min) <= 1 - FULL_TRAVEL];
      const missing = !pressed ? 'pull all the way' : released ? null : 'let go';
      return [
        {
          ...rowOf({ kind: 'trigger', of, minimum, maximum }, { pressed, released, bounceMs: null, missing }),
          extent: { least: seen.min, greatest: seen.max },
          field: { minimum, maximum },
        },
      ];
    }),
  ];
}

type Seen = Pick<InputRow, 'pressed' | 'released' | 'bounceMs' | 'missing'>;

function rowOf(control: InputControl, seen: Seen): InputRow {
  return { says: inputWords(control), down: false, extent: null, field: null, ...seen };
}
