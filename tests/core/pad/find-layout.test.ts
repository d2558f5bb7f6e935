import { describe, expect, it } from 'vitest';
import { usageKey } from '../../../core/hid/usage-names.ts';
import { findLayout } from '../../../core/pad/find-layout.ts';
import type { FieldSource, PadLayout } from '../../../core/pad/layout.ts';
import { demoProfile } from '../../../core/pad/demo-profile.ts';
import { goldenDescriptor, goldenDescriptors } from '../../support/golden-descriptors.ts';
import { parsed } from '../../support/hid-bytes.ts';

/** `0001:0030` of a source; null where there is none. */
function usage(source: FieldSource | null | undefined): string | null {
  if (source === null || source === undefined) return null;
  const { usagePage, usage } = source.control;
  return usageKey({ usagePage: usagePage ?? 0, usage: usage ?? 0 });
}

const X_Y = '0001:0030 0001:0031';
const Z_RZ = '0001:0032 0001:0035';
const RX_RY = '0001:0033 0001:0034';
const PEDALS = '0002:00C5 0002:00C4';
const NOTHING = 'null null';

function partsOf(
  layout: PadLayout,
): Record<'left' | 'right' | 'triggers', string> & { hat: string | null; buttons: number } {
  const { left, right } = layout.stickSources;
  return {
    left: `${String(usage(left?.x))} ${String(usage(left?.y))}`,
    right: `${String(usage(right?.x))} ${String(usage(right?.y))}`,
    triggers: `${String(usage(layout.triggers.left))} ${String(usage(layout.triggers.right))}`,
    hat: usage(layout.hat),
    buttons: layout.buttons.length,
  };
}

const HAT = '0001:0039';

/** What each golden device is, by its source: pads, sticks, wheels, a mouse. Buttons as their files list them. */
const expected: Readonly<
  Record<string, readonly [left: string, right: string, triggers: string, hat: string | null, buttons: number]>
> = {
  'jog-a2': [NOTHING, NOTHING, NOTHING, null, 0],
  'joystick-a': [X_Y, NOTHING, NOTHING, HAT, 12],
  'joystick-a12': [X_Y, NOTHING, NOTHING, HAT, 4],
  'joystick-c': [X_Y, NOTHING, NOTHING, HAT, 7],
  'joystick-delimiter': [X_Y, NOTHING, NOTHING, '0005:0020', 4],
  'keyboard-e6': [NOTHING, NOTHING, NOTHING, null, 0],
  'mouse-a': [NOTHING, NOTHING, NOTHING, null, 0],
  'mouse-e10': [NOTHING, NOTHING, NOTHING, null, 0],
  'pad-a': [X_Y, NOTHING, NOTHING, null, 10],
  'pad-a13': [NOTHING, NOTHING, NOTHING, null, 6],
  'pad-b': [X_Y, RX_RY, Z_RZ, HAT, 13],
  'pad-c': [X_Y, Z_RZ, PEDALS, HAT, 9],
  'pad-e': [X_Y, Z_RZ, RX_RY, HAT, 14],
  'pad-f': [X_Y, Z_RZ, RX_RY, HAT, 14],
  'pad-h': [X_Y, NOTHING, NOTHING, null, 10],
  'pad-j': [X_Y, Z_RZ, PEDALS, HAT, 16],
  'pad-n': [X_Y, Z_RZ, PEDALS, HAT, 11],
  'rc-b': [X_Y, NOTHING, NOTHING, null, 0],
  'wheel-b': [NOTHING, NOTHING, NOTHING, HAT, 14],
  'wheel-c': [NOTHING, NOTHING, NOTHING, null, 6],
  'wheel-d': [NOTHING, NOTHING, NOTHING, null, 8],
  'wheel-e': [NOTHING, NOTHING, NOTHING, null, 6],
  'wheel-f': [NOTHING, NOTHING, NOTHING, HAT, 12],
};

describe('findLayout by usages', () => {
  it.each(goldenDescriptors)('finds what $id has', ({ id, descriptorHex }) => {
    const layout = findLayout(parsed(descriptorHex), null);
    const parts = partsOf(layout);
    expect([parts.left, parts.right, parts.triggers, parts.hat, parts.buttons]).toEqual(expected[id]);
    expect(layout.noSticks === null).toBe(parts.left !== NOTHING);
    expect(layout).toMatchObject({ domain: 'reported', profile: null, clicks: {} });
  });

  it('takes ranges from the fields and lets y grow downwards, as HID has it', () => {
    expect(findLayout(parsed(goldenDescriptor('rc-b').descriptorHex), null).sticks.left).toEqual({
      x: { minimum: 0, maximum: 2047, up: 1 },
      y: { minimum: 0, maximum: 2047, up: -1 },
    });
    expect(findLayout(parsed(goldenDescriptor('pad-j').descriptorHex), null).sticks.right?.y).toEqual({
      minimum: -127,
      maximum: 127,
      up: -1,
    });
  });

  it('reads the report that carries most', () => {
    const axes = (id: string, usages: string, count: string): string =>
      `85 ${id} ${usages} 14 26 ff 00 75 08 95 ${count} 81 02`;
    const descriptor = parsed(
      '05 01 09 05 a1 01',
      axes('01', '09 30 09 31', '02'),
      axes('02', '09 30 09 31 09 32 09 35', '04'),
      'c0',
    );
    const layout = findLayout(descriptor, null);
    expect(layout.stickSources.left?.x.reportId).toBe(2);
    expect(partsOf(layout)).toMatchObject({ left: X_Y, right: Z_RZ });
  });

  it('reads the report with the buttons where the sticks are equal', () => {
    const report = '09 30 09 31 14 26 ff 00 75 08 95 02 81 02';
    const buttons = '05 09 19 01 29 08 25 01 75 01 95 08 81 02 05 01';
    const descriptor = parsed('05 01 09 05 a1 01 85 03', report, '85 04', report, buttons, 'c0');
    expect(findLayout(descriptor, null).stickSources.left?.x.reportId).toBe(4);
  });

  it('reads only reports that arrive, where it is told which', () => {
    const axes = '09 30 09 31 14 26 ff 00 75 08 95 02 81 02';
    const vendor = '06 00 ff 09 20 95 30 81 02';
    const descriptor = parsed('05 01 09 05 a1 01 85 3f', axes, '85 30', vendor, 'c0');
    expect(findLayout(descriptor, null).noSticks).toBeNull();
    expect(findLayout(descriptor, null, new Set([0x3f])).noSticks).toBeNull();
    const silent = findLayout(descriptor, null, new Set([0x30]));
    expect(silent.sticks).toEqual({});
    expect(silent.noSticks).toBe(
      'No axes are known: the pad sends report 48, and its report descriptor names analog axes only in others; a profile of this pad is needed.',
    );
  });
});

describe('what findLayout says where there is no stick', () => {
  it('is that nothing is known without descriptor and profile', () => {
    expect(findLayout(null, null).noSticks).toMatch(/^The pad gives no report descriptor and no profile knows it/);
  });

  it('is that the descriptor names no axes of a pad', () => {
    for (const id of ['keyboard-e6', 'mouse-e10', 'pad-a13'])
      expect(findLayout(parsed(goldenDescriptor(id).descriptorHex), null).noSticks, id).toMatch(
        /^No axes are known: .* names no analog axes/,
      );
  });

  it('is that the axes make no stick', () => {
    expect(findLayout(parsed(goldenDescriptor('wheel-d').descriptorHex), null).noSticks).toMatch(
      /no two that make a stick/,
    );
  });

  it('is that the profile states none', () => {
    expect(findLayout(null, { ...demoProfile, sticks: {} }).noSticks).toMatch(/profile of this pad states no stick/);
  });
});

describe('findLayout by a profile', () => {
  const fitting = parsed('05 01 09 05 a1 01 85 01 06 00 ff 09 20 14 26 ff 00 75 08 95 0b 81 02 c0');

  it('follows the profile alone', () => {
    for (const descriptor of [null, fitting]) {
      const layout = findLayout(descriptor, demoProfile);
      expect(layout).toMatchObject({
        profile: demoProfile.id,
        domain: 'sensor',
        noSticks: null,
        clicks: { left: 11, right: 12 },
      });
      expect(layout.sticks.left).toEqual({
        x: { minimum: 0, maximum: 4095, up: 1 },
        y: { minimum: 0, maximum: 4095, up: -1 },
      });
      expect(layout.buttons.map((button) => button.usage)).toEqual(Array.from({ length: 16 }, (_, index) => index + 1));
    }
  });

  it('does not where the pad has no such report, or a shorter one', () => {
    const axes = '05 01 09 30 09 31 14 26 ff 00 75 08 95 02 81 02 c0';
    for (const head of ['05 01 09 05 a1 01 85 02', '05 01 09 05 a1 01 85 01'])
      expect(findLayout(parsed(head, axes), demoProfile)).toMatchObject({
        profile: null,
        domain: 'reported',
        noSticks: null,
      });
  });
});
