/** Buttons, hat and triggers as rows that a person reads. */
import { formatQuantity, NOTHING } from './format-quantity.ts';
import type { InputsMeasure } from './inputs-measure.ts';
import { row, type TableRow } from './table.ts';

export function inputsRows({ buttons, hat, triggers }: InputsMeasure): TableRow[] {
  const usages = (which: readonly { readonly usage: number }[]): string =>
    which.length === 0 ? 'none' : which.map(({ usage }) => usage).join(', ');
  const worst = buttons.toSorted((a, b) => (b.bounceMs ?? -1) - (a.bounceMs ?? -1))[0];
  return [
    row('buttons pressed and released', usages(buttons.filter((one) => one.pressed && one.released))),
    row('buttons that never came up', usages(buttons.filter((one) => one.pressed && !one.released))),
    row('buttons not seen pressed', usages(buttons.filter((one) => !one.pressed))),
    row('longest bounce', bounceText(worst), 'ms'),
    ...(hat === null
      ? []
      : [row('hat directions seen', hat.length === 0 ? 'none' : hat.join(', '), '° clockwise from up')]),
    ...(['left', 'right'] as const).flatMap((of) => {
      const trigger = triggers[of];
      if (trigger === undefined) return [];
      const { min, max, fieldMinimum, fieldMaximum } = trigger;
      return [row(`${of} trigger`, `${min} … ${max}`, `counts of ${fieldMinimum} … ${fieldMaximum}`)];
    }),
  ];
}

function bounceText(worst: InputsMeasure['buttons'][number] | undefined): string {
  if (worst?.bounceMs == null) return NOTHING;
  const written = formatQuantity(worst.bounceMs, null, 1);
  return worst.bounceMs === 0 ? written : `${written}, button ${worst.usage}`;
}
