/** The controls of a pad that are looked at one by one: every button, every hat direction, every trigger. */
import type { PadLayout } from '../../pad/layout.ts';
import { degreesPerCount } from '../../pad/hat.ts';
import { STICKS, type StickId } from '../../pad/stick.ts';

export type InputControl =
  | { readonly kind: 'button'; readonly usage: number; readonly click: StickId | null }
  /** Degrees clockwise from up. */
  | { readonly kind: 'hat'; readonly degrees: number }
  | { readonly kind: 'trigger'; readonly of: StickId; readonly minimum: number; readonly maximum: number };

const HAT_WORDS = ['up', 'up-right', 'right', 'down-right', 'down', 'down-left', 'left', 'up-left'] as const;

/** In the order of their usages; a direction pad of four switches counts its four, a hat as many as its field names, eight at most. */
export function listInputs({ buttons, clicks, hat, dPad, triggers }: PadLayout): InputControl[] {
  const step = hat === null ? 90 : Math.max(45, degreesPerCount(hat.control));
  const directions = hat === null && dPad === undefined ? 0 : Math.round(360 / step);
  return [
    ...buttons.map(({ usage }): InputControl => {
      const click = STICKS.find((stick) => clicks[stick] === usage) ?? null;
      return { kind: 'button', usage, click };
    }),
    ...Array.from({ length: directions }, (_, i): InputControl => ({ kind: 'hat', degrees: i * step })),
    ...STICKS.flatMap((of): InputControl[] => {
      const field = triggers[of]?.control;
      if (field === undefined) return [];
      return [{ kind: 'trigger', of, minimum: field.logicalMinimum, maximum: field.logicalMaximum }];
    }),
  ];
}

/** E.g. `button 3`, `button 9, left stick`, `hat up-right`, `left trigger`. */
export function inputWords(control: InputControl): string {
  if (control.kind === 'trigger') return `${control.of} trigger`;
  if (control.kind === 'hat') return `hat ${HAT_WORDS[Math.round(control.degrees / 45) % 8] ?? ''}`;
  return control.click === null ? `button ${control.usage}` : `button ${control.usage}, ${control.click} stick`;
}
