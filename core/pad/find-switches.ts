/** Hat, direction pad and buttons of one report. */
import type { Control } from '../hid/control.ts';
import { desktop, game, hasUsage, pages } from '../hid/usage-names.ts';
import type { FieldSource, PadLayout } from './layout.ts';

/** Buttons of page 9 that a reading has room for. */
export const BUTTON_COUNT = 128;

export type Switches = Pick<PadLayout, 'hat' | 'dPad' | 'buttons' | 'buttonSlots'>;

/** `controls` are the non-constant input controls of the report that belong to the pad. */
export function findSwitches(reportId: number, controls: readonly Control[]): Switches {
  const source = (control: Control): FieldSource => ({ reportId, control });
  const hat = controls.find(isHat);
  const dPad = hat === undefined ? findDPad(controls) : null;
  const slots = findButtonSlots(controls);
  return {
    hat: hat === undefined ? null : source(hat),
    ...(dPad === null
      ? {}
      : { dPad: { up: source(dPad.up), right: source(dPad.right), down: source(dPad.down), left: source(dPad.left) } }),
    buttons: findButtons(controls, slots).map(({ usage, control }) => ({ usage, source: source(control) })),
    ...(slots.length === 0 ? {} : { buttonSlots: slots.map(source) }),
  };
}

function isHat(control: Control): boolean {
  if (control.array || control.relative) return false;
  return hasUsage(control, pages.genericDesktop, desktop.hatSwitch) || hasUsage(control, pages.game, game.pointOfView);
}

function findDPad(controls: readonly Control[]): Record<'up' | 'right' | 'down' | 'left', Control> | null {
  const named = (usage: number): Control | undefined =>
    controls.find((control) => !control.array && hasUsage(control, pages.genericDesktop, usage));
  const up = named(desktop.dPadUp);
  const right = named(desktop.dPadRight);
  const down = named(desktop.dPadDown);
  const left = named(desktop.dPadLeft);
  return up && right && down && left ? { up, right, down, left } : null;
}

/** The slots of an array share their list of choices, which may be long: it is looked through once. */
function findButtonSlots(controls: readonly Control[]): readonly Control[] {
  const known = new Map<Control['choices'], boolean>();
  return controls.filter(({ array, choices }) => {
    if (!array) return false;
    const named = known.get(choices) ?? choices.some(isButton);
    known.set(choices, named);
    return named;
  });
}

function findButtons(
  controls: readonly Control[],
  slots: readonly Control[],
): readonly { readonly usage: number; readonly control: Control }[] {
  const found = new Map<number, Control>();
  for (const control of controls) {
    if (control.array) continue;
    const named = [control, ...control.aliases].find(isButton);
    if (typeof named?.usage === 'number' && !found.has(named.usage)) found.set(named.usage, control);
  }
  const lists = new Map(slots.toReversed().map((slot) => [slot.choices, slot]));
  for (const slot of lists.values())
    for (const choice of slot.choices) if (isButton(choice) && !found.has(choice.usage)) found.set(choice.usage, slot);
  return [...found].map(([usage, control]) => ({ usage, control })).sort((one, other) => one.usage - other.usage);
}

/** A button of page 9 that a reading has room for; usage 0 means that none is pressed. */
export function isButton({
  usagePage,
  usage,
}: {
  readonly usagePage: number | null;
  readonly usage: number | null;
}): boolean {
  return usagePage === pages.button && usage !== null && usage >= 1 && usage <= BUTTON_COUNT;
}
