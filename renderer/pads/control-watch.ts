/** The worklist of a pad's controls: every button, hat direction and trigger, and what was seen of it. */
import type { PadLayout, ReadingSlot } from '../../core/pad/layout.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';
import { SwitchWatch } from '../../core/capture/guide/switch-watch.ts';

/** One row of the worklist. */
export interface ControlRow {
  readonly id: string;
  readonly says: string;
  readonly down: boolean;
  readonly pressed: boolean;
  readonly released: boolean;
  readonly bounceMillis: number | null;
  /** Raw count of a trigger; null for an on-off control. */
  readonly value: number | null;
}

/** Shares of a trigger's field beyond which it counts as pressed and as released. Common practice. */
const TRIGGER_PRESSED = 0.9;
const TRIGGER_RELEASED = 0.1;
const HAT_WORDS = ['up', 'up-right', 'right', 'down-right', 'down', 'down-left', 'left', 'up-left'] as const;

interface TriggerField {
  readonly stick: StickId;
  readonly minimum: number;
  readonly maximum: number;
  readonly watch: SwitchWatch;
}

export class ControlWatch {
  /** Grows with every change that shows in the worklist. */
  version = 0;
  readonly #buttons: readonly { usage: number; says: string; watch: SwitchWatch }[];
  readonly #hat: readonly SwitchWatch[];
  readonly #triggers: readonly TriggerField[];
  readonly #triggerValues = new Float64Array(2).fill(Number.NaN);
  #pressedUsage: number | null = null;

  constructor(layout: PadLayout) {
    this.#buttons = layout.buttons.map(({ usage }) => {
      const clicked = STICKS.find((stick) => layout.clicks[stick] === usage);
      const click = clicked === undefined ? '' : `, ${clicked} stick`;
      return { usage, says: `Button ${String(usage)}${click}`, watch: new SwitchWatch() };
    });
    this.#hat = layout.hat === null ? [] : HAT_WORDS.map(() => new SwitchWatch());
    this.#triggers = STICKS.flatMap((stick) => {
      const control = layout.triggers[stick]?.control;
      if (control === undefined) return [];
      return [{ stick, minimum: control.logicalMinimum, maximum: control.logicalMaximum, watch: new SwitchWatch() }];
    });
  }

  /** The button that went down last, for choosing one by pressing it; null until one did since `forgetPress`. */
  get pressedUsage(): number | null {
    return this.#pressedUsage;
  }

  forgetPress(): void {
    this.#pressedUsage = null;
  }

  take(t: number, slot: ReadingSlot): void {
    for (const { usage, watch } of this.#buttons) {
      const down = (((slot.buttons[(usage - 1) >> 5] ?? 0) >>> ((usage - 1) & 31)) & 1) === 1;
      if (!watch.take(t, down)) continue;
      if (down) this.#pressedUsage = usage;
      this.version += 1;
    }
    const hat = slot.hat[0] ?? Number.NaN;
    const pointed = Number.isNaN(hat) ? -1 : Math.round(hat / 45) % 8;
    for (let index = 0; index < this.#hat.length; index += 1)
      if (this.#hat[index]?.take(t, index === pointed) === true) this.version += 1;
    for (const trigger of this.#triggers) this.#takeTrigger(t, trigger, slot);
  }

  rows(): ControlRow[] {
    const buttons = this.#buttons.map(({ usage, says, watch }) => row(`button-${String(usage)}`, says, watch, null));
    const hat = this.#hat.map((watch, index) =>
      row(`hat-${String(index)}`, `Hat ${HAT_WORDS[index] ?? ''}`, watch, null),
    );
    const triggers = this.#triggers.map(({ stick, watch }) => {
      const value = this.#triggerValues[stick === 'left' ? 0 : 1] ?? Number.NaN;
      return row(`trigger-${stick}`, `${stick === 'left' ? 'Left' : 'Right'} trigger`, watch, value);
    });
    return [...buttons, ...hat, ...triggers];
  }

  startAgain(): void {
    for (const { watch } of this.#buttons) watch.startAgain();
    for (const watch of this.#hat) watch.startAgain();
    for (const { watch } of this.#triggers) watch.startAgain();
    this.version += 1;
  }

  #takeTrigger(t: number, trigger: TriggerField, slot: ReadingSlot): void {
    const index = trigger.stick === 'left' ? 0 : 1;
    const value = slot.triggers[index] ?? Number.NaN;
    if (Number.isNaN(value)) return;
    if (value !== this.#triggerValues[index]) this.version += 1;
    this.#triggerValues[index] = value;
    const share = (value - trigger.minimum) / (trigger.maximum - trigger.minimum);
    // Between the two shares the trigger is on its way: neither pressed nor released.
    if (share >= TRIGGER_PRESSED) trigger.watch.take(t, true);
    else if (share <= TRIGGER_RELEASED) trigger.watch.take(t, false);
  }
}

function row(id: string, says: string, watch: SwitchWatch, value: number | null): ControlRow {
  return {
    id,
    says,
    down: watch.down,
    pressed: watch.pressed,
    released: watch.released,
    // A trigger has no contact that could bounce.
    bounceMillis: watch.bounceUs === null || value !== null ? null : watch.bounceUs / 1000,
    value: value === null || Number.isNaN(value) ? null : value,
  };
}
