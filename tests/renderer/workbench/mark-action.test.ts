import { describe, expect, it } from 'vitest';
import { markAction, WheelNotches } from '../../../renderer/workbench/mark-action.ts';
import { readCount } from '../../../renderer/workbench/read-count.ts';

const plain = { shiftKey: false, ctrlKey: false, metaKey: false, altKey: false };

function action(key: string, held: Partial<typeof plain> = {}) {
  return markAction({ key, ...plain, ...held }, 4, 16, 50);
}

describe('markAction', () => {
  it('moves by the step, with Shift by the larger one, with the page keys by 64', () => {
    expect(action('ArrowRight')).toEqual({ does: 'nudge', counts: 4 });
    expect(action('ArrowDown', { shiftKey: true })).toEqual({ does: 'nudge', counts: -16 });
    expect(action('PageUp')).toEqual({ does: 'nudge', counts: 64 });
  });

  it('chooses a step by the number keys', () => {
    expect(['1', '2', '3', '4', '5'].map((key) => action(key))).toEqual(
      [1, 4, 16, 64, 50].map((counts) => ({ does: 'step', counts })),
    );
  });

  it('undoes and redoes with Ctrl and without', () => {
    expect(action('z')?.does).toBe('undo');
    expect(action('Z', { shiftKey: true, ctrlKey: true })?.does).toBe('redo');
    expect(action('y', { ctrlKey: true })?.does).toBe('redo');
  });

  it('puts a number back to the proposed one or to now', () => {
    expect(action('Delete')).toEqual({ does: 'reset', to: 'proposed' });
    expect(action('n')).toEqual({ does: 'reset', to: 'now' });
  });

  it('leaves every other key to the page', () => {
    for (const key of ['Tab', 'Enter', 'a', '6', 'Escape']) expect(action(key)).toBeNull();
    expect(action('p', { ctrlKey: true })).toBeNull();
    expect(action('ArrowRight', { altKey: true })).toBeNull();
  });
});

describe('WheelNotches', () => {
  it('takes one event of a coarse wheel as one notch and adds up a fine one', () => {
    const coarse = new WheelNotches();
    expect([coarse.take(120), coarse.take(120), coarse.take(-120)]).toEqual([1, 1, -1]);
    const fine = new WheelNotches();
    expect(Array.from({ length: 10 }, () => fine.take(10)).reduce((a, b) => a + b)).toBe(2);
  });
});

describe('readCount', () => {
  it('reads what a hand writes as a count and nothing else', () => {
    expect(['942', ' 127,5 ', '\u22125', '1e3', '', '12a', 'NaN'].map(readCount)).toEqual([
      942,
      127.5,
      -5,
      null,
      null,
      null,
      null,
    ]);
  });
});
