/** What was seen of one control of a pad, and what is still missing of it. */
import type { ReadingSlot } from '../../pad/layout.ts';
import type { InputControl } from './inputs-list.ts';
import { SwitchWatch } from './switch-watch.ts';

/** Shares of a trigger's field beyond which it counts as pulled all the way and as let go. Common practice. */
const PULLED = 0.9;
const FREE = 0.1;
/** Hats point within this of a direction; theirs are 45° apart at least. */
const POINTS_WITHIN = 22.5;

export class InputWatch {
  readonly control: InputControl;
  readonly #switch = new SwitchWatch();
  #least = Number.POSITIVE_INFINITY;
  #greatest = Number.NEGATIVE_INFINITY;

  constructor(control: InputControl) {
    this.control = control;
  }

  get isDown(): boolean {
    return this.#switch.down;
  }

  get pressed(): boolean {
    return this.#switch.pressed;
  }

  get released(): boolean {
    return this.#switch.released;
  }

  /** Longest bounce in ms; null for a trigger, which has no contact, and before the first press. */
  get bounceMs(): number | null {
    const { bounceUs } = this.#switch;
    return bounceUs === null || this.control.kind === 'trigger' ? null : bounceUs / 1000;
  }

  /** Counts that a trigger was seen between; null for others and before its first reading. */
  get extent(): { readonly least: number; readonly greatest: number } | null {
    return this.#least > this.#greatest ? null : { least: this.#least, greatest: this.#greatest };
  }

  /** What is still missing, in words; null where all was seen. */
  get missing(): string | null {
    if (!this.pressed) return this.control.kind === 'trigger' ? 'pull all the way' : 'press';
    if (!this.released) return 'let go';
    return null;
  }

  /** Answers whether anything changed. */
  take(t: number, slot: ReadingSlot): boolean {
    const { control } = this;
    if (control.kind === 'trigger') return this.#takeTrigger(t, slot.triggers[control.of === 'left' ? 0 : 1]);
    if (control.kind === 'button') {
      const bit = control.usage - 1;
      return this.#switch.take(t, (((slot.buttons[bit >>> 5] ?? 0) >>> (bit & 31)) & 1) === 1);
    }
    const hat = slot.hat[0] ?? Number.NaN;
    const off = Math.abs(((hat - control.degrees + 540) % 360) - 180);
    return this.#switch.take(t, off < POINTS_WITHIN);
  }

  #takeTrigger(t: number, value = Number.NaN): boolean {
    const { control } = this;
    if (control.kind !== 'trigger' || Number.isNaN(value)) return false;
    const grew = value < this.#least || value > this.#greatest;
    this.#least = Math.min(value, this.#least);
    this.#greatest = Math.max(value, this.#greatest);
    const share = (value - control.minimum) / (control.maximum - control.minimum);
    // Between the two shares the trigger is on its way: neither pulled nor let go.
    const changed = share >= PULLED ? this.#switch.take(t, true) : share <= FREE && this.#switch.take(t, false);
    return changed || grew;
  }
}
