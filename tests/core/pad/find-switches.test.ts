import { describe, expect, it } from 'vitest';
import { findSwitches } from '../../../core/pad/find-switches.ts';
import { inputs } from '../../support/hid-bytes.ts';

function usagesOf(...descriptor: string[]): number[] {
  return findSwitches(1, inputs(...descriptor)).buttons.map((button) => button.usage);
}

const NIBBLE = '05 01 14 25 07 75 04 95 01';

describe('hats', () => {
  it('are found by their usage, and by the one of the game page', () => {
    expect(findSwitches(1, inputs(NIBBLE, '09 39 81 42')).hat).toMatchObject({ reportId: 1, control: { usage: 0x39 } });
    expect(findSwitches(1, inputs('05 05', NIBBLE.slice(6), '09 20 81 42')).hat?.control.usagePage).toBe(5);
  });

  it('are the first where there are several', () => {
    expect(findSwitches(1, inputs(NIBBLE, '95 02 09 39 81 42')).hat?.control.bitOffset).toBe(0);
  });
});

describe('direction pads', () => {
  const four = '05 01 19 90 29 93 14 25 01 75 01 95 04 81 02';

  it('of four switches are found by up, down, right and left', () => {
    const { dPad, hat } = findSwitches(1, inputs(four));
    expect(hat).toBeNull();
    expect(dPad).toMatchObject({
      up: { control: { bitOffset: 0 } },
      down: { control: { bitOffset: 1 } },
      right: { control: { bitOffset: 2 } },
      left: { control: { bitOffset: 3 } },
    });
  });

  it('give way to a hat, and are none with a switch missing', () => {
    expect(findSwitches(1, inputs(four, NIBBLE, '09 39 81 42')).dPad).toBeUndefined();
    expect(findSwitches(1, inputs('05 01 19 90 29 92 14 25 01 75 01 95 03 81 02')).dPad).toBeUndefined();
  });
});

describe('buttons', () => {
  it('come in order of their numbers, each once', () => {
    expect(usagesOf('05 09 09 05 09 01 09 02 09 01 14 25 01 75 01 95 04 81 02')).toEqual([1, 2, 5]);
  });

  it('are those of 1 to 128', () => {
    expect(usagesOf('05 09 19 00 2a 00 01 14 25 01 75 01 96 01 01 81 02')).toEqual(
      Array.from({ length: 128 }, (_, index) => index + 1),
    );
  });

  it('are found under an alias too', () => {
    expect(usagesOf('14 25 01 75 01 95 01 a9 01 0b b7 00 02 00 0b 03 00 09 00 a9 00 81 02')).toEqual([3]);
  });

  it('of an array come with every slot of it', () => {
    const found = findSwitches(1, inputs('05 09 19 00 29 03 14 25 03 75 04 95 02 81 00'));
    expect(found.buttons.map((button) => button.usage)).toEqual([1, 2, 3]);
    expect(found.buttonSlots?.map((slot) => slot.control.bitOffset)).toEqual([0, 4]);
  });
});
