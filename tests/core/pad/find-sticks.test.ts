import { describe, expect, it } from 'vitest';
import { findAxes } from '../../../core/pad/axes.ts';
import { findSticks } from '../../../core/pad/find-sticks.ts';
import { findTriggers } from '../../../core/pad/find-triggers.ts';
import { inputs } from '../../support/hid-bytes.ts';

const GAME_PAD = '05 01 09 05 a1 01';
const JOYSTICK = '05 01 09 04 a1 01';

/** Axes of page 1 by name, each of one size, 0 up to all its bits. */
function axes(names: string, bits = 8): string {
  const usages: Readonly<Record<string, string>> = {
    x: '09 30',
    y: '09 31',
    z: '09 32',
    rx: '09 33',
    ry: '09 34',
    rz: '09 35',
    slider: '09 36',
    dial: '09 37',
    wheel: '09 38',
  };
  const list = names.split(' ');
  return `05 01 ${list.map((name) => usages[name]).join(' ')} 14 ${maximum(bits)} ${size(bits, list.length)} 81 02`;
}

function maximum(bits: number): string {
  return `27 ${[0, 8, 16, 24].map((shift) => hex(((2 ** bits - 1) / 2 ** shift) & 0xff)).join(' ')}`;
}

function size(bits: number, count: number): string {
  return `75 ${hex(bits)} 95 ${hex(count)}`;
}

function hex(byte: number): string {
  return byte.toString(16).padStart(2, '0');
}

const pedals = '05 02 09 c5 09 c4 14 26 ff 00 75 08 95 02 81 02';
const buttons = '05 09 19 01 29 08 14 25 01 75 01 95 08 81 02';

const NAMES: Readonly<Record<number, string>> = {
  0x30: 'x',
  0x31: 'y',
  0x32: 'z',
  0x33: 'rx',
  0x34: 'ry',
  0x35: 'rz',
  0xc5: 'brake',
  0xc4: 'accelerator',
};

/** The names of what was found: left, right, triggers. */
function found(...descriptor: string[]): string {
  const report = findAxes(inputs(...descriptor, 'c0'));
  const sticks = findSticks(report);
  const triggers = findTriggers(report, sticks);
  const name = (usage: number | null | undefined): string => NAMES[usage ?? 0] ?? '';
  const pair = (stick: 'left' | 'right'): string =>
    `${name(sticks[stick]?.x.control.usage)} ${name(sticks[stick]?.y.control.usage)}`.trim();
  return `${pair('left')} | ${pair('right')} | ${name(triggers.left?.usage)} ${name(triggers.right?.usage)}`.trim();
}

describe('on a gamepad', () => {
  it.each([
    ['x y', 'x y |  |'],
    ['x y z rz', 'x y | z rz |'],
    ['x y rx ry', 'x y | rx ry |'],
    ['x y rz z', 'x y | z rz |'],
    ['x y z rz rx ry', 'x y | z rz | rx ry'],
    ['x y rx ry z rz', 'x y | rx ry | z rz'],
    ['x y z rx ry rz', 'x y | rx ry | z rz'],
    ['z rz x y rx ry', 'x y | rx ry | z rz'],
    ['y x rz z', 'x y | z rz |'],
  ])('equal axes %s are sticks and triggers by their order: %s', (names, what) => {
    expect(found(GAME_PAD, axes(names))).toBe(what);
  });

  it('the pair with the range of the left stick is the right one, whatever the order', () => {
    expect(found(GAME_PAD, axes('x y', 16), axes('z rz', 10), axes('rx ry', 16))).toBe('x y | rx ry | z rz');
    expect(found(GAME_PAD, axes('x y', 16), axes('rx ry', 8), axes('z rz', 16))).toBe('x y | z rz | rx ry');
  });

  it('a lone second pair of another range is triggers', () => {
    expect(found(GAME_PAD, axes('x y', 16), axes('z rz', 10))).toBe('x y |  | z rz');
    expect(found(GAME_PAD, axes('x y', 16), axes('rx ry', 8))).toBe('x y |  | rx ry');
  });

  it('signed sticks are told from unsigned triggers of the same size', () => {
    const signed = '05 01 09 30 09 31 09 33 09 34 15 81 25 7f 75 08 95 04 81 02';
    expect(found(GAME_PAD, signed, axes('z rz'))).toBe('x y | rx ry | z rz');
    expect(found(GAME_PAD, axes('z rz'), signed)).toBe('x y | rx ry | z rz');
  });

  it('accelerator and brake are the triggers', () => {
    expect(found(GAME_PAD, axes('x y z rz'), pedals)).toBe('x y | z rz | brake accelerator');
    expect(found(GAME_PAD, axes('x y rx ry'), pedals)).toBe('x y | rx ry | brake accelerator');
    const one = '05 02 09 c4 14 26 ff 00 75 08 95 01 81 02';
    expect(found(GAME_PAD, axes('x y z rz'), one)).toBe('x y | z rz |  accelerator');
  });

  it('one Z for both triggers is left alone', () => {
    expect(found(GAME_PAD, axes('x y rx ry z', 16))).toBe('x y | rx ry |');
  });

  it('a pair in a collection of its own is the right stick before one that stands nearer', () => {
    const [left, triggers, right] = [axes('x y'), axes('z rz'), axes('rx ry')];
    expect(found(GAME_PAD, '09 01 a1 00', left, 'c0', triggers, buttons, '05 01 09 01 a1 00', right, 'c0')).toBe(
      'x y | rx ry | z rz',
    );
    expect(found(GAME_PAD, '09 01 a1 00', left, 'c0', right, buttons, '05 01 09 01 a1 00', triggers, 'c0')).toBe(
      'x y | z rz | rx ry',
    );
  });

  it('a second X and Y is the right stick', () => {
    expect(found(GAME_PAD, '09 01 a1 00', axes('x y'), 'c0 09 01 a1 00', axes('x y'), 'c0')).toBe('x y | x y |');
  });

  it('half of a split pad may have its only stick under other names', () => {
    expect(found(GAME_PAD, axes('rx ry'))).toBe('rx ry |  |');
    expect(found(GAME_PAD, axes('z rz'), buttons)).toBe('z rz |  |');
  });

  it('an X without Y is no stick, and neither is what stands beside it', () => {
    expect(found(GAME_PAD, axes('x', 16), axes('z rz'))).toBe('|  | z rz');
  });

  it('axes of unlike size are no stick', () => {
    expect(found(GAME_PAD, axes('x', 10), axes('y', 8))).toBe('|  |');
  });

  it('X and Y of three positions are switches', () => {
    expect(found(GAME_PAD, '05 01 09 30 09 31 15 ff 25 01 75 02 95 02 81 02')).toBe('|  |');
  });

  it('axes of 4 to 32 bits are read', () => {
    for (const bits of [4, 7, 12, 16, 24, 31]) expect(found(GAME_PAD, axes('x y', bits))).toBe('x y |  |');
  });
});

describe('on what calls itself a joystick', () => {
  it('four like axes side by side are two sticks: many pads say joystick', () => {
    expect(found(JOYSTICK, axes('x y z rz'))).toBe('x y | z rz |');
    expect(found(JOYSTICK, axes('x y rx ry'))).toBe('x y | rx ry |');
    expect(found(JOYSTICK, axes('x y z rz'), axes('rx ry'))).toBe('x y | z rz | rx ry');
  });

  it('a twist, a throttle, a rudder or a slider is no second stick', () => {
    expect(found(JOYSTICK, axes('x y', 10), axes('rz'), axes('slider'))).toBe('x y |  |');
    expect(found(JOYSTICK, axes('x y z rz'), axes('slider'))).toBe('x y |  |');
    expect(found(JOYSTICK, axes('x y z rz'), '05 02 09 bb 75 08 95 01 81 02')).toBe('x y |  |');
    expect(found(JOYSTICK, axes('x y z rz'), '05 02 09 ba 75 08 95 01 81 02')).toBe('x y |  |');
    expect(found(JOYSTICK, axes('x y z rx ry rz'))).toBe('x y |  |');
    expect(found(JOYSTICK, axes('x y', 14), axes('z rz', 8))).toBe('x y |  |');
  });

  it('a wheel and its pedals are no stick', () => {
    expect(found(JOYSTICK, axes('x', 14), axes('y rz'))).toBe('|  |');
    expect(found(JOYSTICK, axes('x', 16), axes('y z rz', 8))).toBe('|  |');
    expect(found(JOYSTICK, axes('x'), buttons, axes('y z'))).toBe('|  |');
    expect(found(JOYSTICK, '65 14', axes('x', 16), '65 00', axes('y z rz', 16))).toBe('|  |');
  });

  it('a unit left in force by a hat before the right stick says nothing', () => {
    expect(found(GAME_PAD, axes('x y'), '65 14', axes('z rz'))).toBe('x y | z rz |');
    expect(found(JOYSTICK, axes('x y'), '65 14', axes('z rz'))).toBe('x y | z rz |');
  });
});

describe('on other devices', () => {
  it('mice, keyboards, tablets and pointers have axes but no stick', () => {
    for (const application of ['05 01 09 02', '05 01 09 06', '05 0d 09 02', '05 01 09 01', '05 0c 09 01'])
      expect(found(application, 'a1 01', axes('x y')), application).toBe('|  |');
  });

  it('relative axes make no stick', () => {
    expect(found(GAME_PAD, '05 01 09 30 09 31 15 81 25 7f 75 08 95 02 81 06')).toBe('|  |');
  });

  it('a controller of many axes has one stick at most', () => {
    expect(found('05 01 09 08 a1 01', axes('x y z rx ry rz', 16))).toBe('x y |  |');
  });

  it('vendor-defined and bare descriptors that name axes are believed', () => {
    expect(found('06 00 ff 09 01 a1 01', axes('x y'))).toBe('x y |  |');
    expect(found('09 00 a1 00', axes('x y'))).toBe('x y |  |');
  });

  it('aliases of a delimited set count as usages', () => {
    const set = (preferred: string, alias: string): string => `a9 01 0b ${preferred} 0b ${alias} a9 00`;
    const pair = `${set('20 00 00 ff', '30 00 01 00')} ${set('21 00 00 ff', '31 00 01 00')}`;
    const report = findAxes(inputs(GAME_PAD, pair, '14 26 ff 00 75 08 95 02 81 02 c0'));
    expect(findSticks(report).left?.x.control.usagePage).toBe(0xff00);
  });
});
