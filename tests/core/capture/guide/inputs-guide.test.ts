import { describe, expect, it } from 'vitest';
import { InputsGuide } from '../../../../core/capture/guide/inputs-guide.ts';
import { inputWords, listInputs } from '../../../../core/capture/guide/inputs-list.ts';
import type { ReadingSlot } from '../../../../core/pad/layout.ts';
import { profileLayout } from '../../../../core/pad/profile-layout.ts';
import { demoProfile } from '../../../../core/pad/demo-profile.ts';
import { createReadingSlot } from '../../../../core/pad/reading-slot.ts';

const layout = profileLayout(demoProfile);

class Fingers {
  t = 0;
  readonly slot: ReadingSlot = createReadingSlot();
  readonly guide = new InputsGuide(layout);

  constructor() {
    this.slot.triggers.set([0, 0]);
    this.report();
  }

  report(millis = 50): this {
    this.t += millis * 1000;
    this.guide.reading(this.t, this.slot);
    return this;
  }

  button(usage: number, isDown: boolean): this {
    const bit = 1 << (usage - 1);
    this.slot.buttons[0] = isDown ? (this.slot.buttons[0] ?? 0) | bit : (this.slot.buttons[0] ?? 0) & ~bit;
    return this;
  }

  press(usage: number): this {
    return this.button(usage, true).report().button(usage, false).report();
  }

  hat(degrees: number): this {
    this.slot.hat[0] = degrees;
    this.report();
    this.slot.hat[0] = Number.NaN;
    return this.report();
  }

  pull(trigger: 0 | 1, ...counts: number[]): this {
    for (const count of counts) {
      this.slot.triggers[trigger] = count;
      this.report();
    }
    return this;
  }

  missing(): string[] {
    return this.guide.missing.map(({ control, missing }) => `${inputWords(control)}: ${missing ?? ''}`);
  }
}

describe('InputsGuide', () => {
  it('lists every button, hat direction and trigger, and names the clicks of the sticks', () => {
    const words = listInputs(layout).map(inputWords);
    expect(words).toHaveLength(layout.buttons.length + 8 + 2);
    expect(words).toContain(`button ${layout.clicks.left ?? 0}, left stick`);
    expect(words).toContain('hat down-left');
    expect(words.slice(-2)).toEqual(['left trigger', 'right trigger']);
  });

  it('ends by itself once everything was pressed and let go, in any order, and names what is missing until then', () => {
    const fingers = new Fingers();
    expect(fingers.missing()).toHaveLength(layout.buttons.length + 10);
    for (const { usage } of layout.buttons.toReversed()) fingers.press(usage);
    for (const degrees of [315, 0, 45, 90, 135, 180, 225]) fingers.hat(degrees);
    fingers.pull(0, 128, 255, 128, 0).pull(1, 200, 0);
    expect(fingers.missing()).toEqual(['hat left: press', 'right trigger: pull all the way']);
    expect(fingers.guide.prompt).toBe(
      'Press and let go of every control once, in any order. Missing: hat left (press), right trigger (pull all the way).',
    );
    fingers.hat(270).pull(1, 255);
    expect(fingers.missing()).toEqual(['right trigger: let go']);
    expect(fingers.guide.isDone).toBe(false);
    fingers.pull(1, 3);
    expect(fingers.guide.isDone).toBe(true);
    expect(fingers.guide.prompt).toBe('Every control was seen pressed and released.');
  });

  it('says that a button which is held must be let go', () => {
    const fingers = new Fingers().button(3, true).report();
    expect(fingers.missing()).toContain('button 3: let go');
  });

  it('measures bounce and the extent of the triggers, and grows its version only where something changed', () => {
    const fingers = new Fingers();
    const before = fingers.guide.version;
    fingers.report().report();
    expect(fingers.guide.version).toBe(before);
    fingers.button(2, true).report(50).button(2, false).report(3).button(2, true).report(4).button(2, false).report(80);
    const second = fingers.guide.watches.find(({ control }) => control.kind === 'button' && control.usage === 2);
    expect(second).toMatchObject({ pressed: true, released: true, bounceMs: 7 });
    fingers.pull(0, 20, 231, 12);
    const trigger = fingers.guide.watches.find(({ control }) => control.kind === 'trigger');
    expect(trigger).toMatchObject({ extent: { least: 0, greatest: 231 }, bounceMs: null, missing: null });
  });

  it('goes on without what will not come, on the hand’s word', () => {
    const fingers = new Fingers();
    fingers.guide.confirm();
    expect(fingers.guide.isDone).toBe(true);
  });

  it('counts four directions where a pad has four switches and no hat', () => {
    const source = layout.buttons[0]!.source;
    const dPad = { up: source, right: source, down: source, left: source };
    const words = listInputs({ ...layout, hat: null, dPad, buttons: [], triggers: {} }).map(inputWords);
    expect(words).toEqual(['hat up', 'hat right', 'hat down', 'hat left']);
    expect(new InputsGuide({ ...layout, hat: null, buttons: [], triggers: {} }).isDone).toBe(true);
  });
});
