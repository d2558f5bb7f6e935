import { describe, expect, it } from 'vitest';
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import { createReadingDecoder } from '../../../core/pad/decode-reading.ts';
import { findLayout } from '../../../core/pad/find-layout.ts';
import { findProfile } from '../../../core/pad/profiles.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import { demoNames } from '../../../core/simulate/demos.ts';
import { createSimulatedPad } from '../../../core/simulate/simulated-pad.ts';
import { bitsAt } from '../../support/simulated-readings.ts';

describe('the bytes of a simulated pad', () => {
  it.each(demoNames)('are decoded like those of any pad: %s', (name) => {
    const pad = createSimulatedPad(name, 3);
    const descriptor = parseDescriptor(pad.descriptor);
    if (!descriptor.ok) throw new Error(descriptor.problem.says);
    const profile = findProfile(pad.identity.vendorId, pad.identity.productId);
    const layout = findLayout(descriptor.value, profile);
    const size = name === 'plain' ? 8 : 12;
    expect(layout.domain).toBe(name === 'plain' ? 'reported' : 'sensor');
    expect(layout.buttons).toHaveLength(name === 'plain' ? 14 : 16);
    for (const stick of ['left', 'right'] as const)
      expect(layout.sticks[stick]).toEqual({
        x: { minimum: 0, maximum: 2 ** size - 1, up: 1 },
        y: { minimum: 0, maximum: 2 ** size - 1, up: -1 },
      });

    const decoder = createReadingDecoder(layout);
    const slot = createReadingSlot();
    pad.hand.does('left', 'wander');
    pad.hand.does('right', 'circle');
    pad.hand.press(5, 100);
    pad.hand.pull('left', 1);
    pad.hand.pressHat(90);
    let read = 0;
    pad.advance(500_000, (t, reportId, payload) => {
      expect(decoder.read(reportId, payload, slot)).toBe('reading');
      expect([...slot.axes]).toEqual([0, 1, 2, 3].map((axis) => bitsAt(payload, axis * size, size)));
      expect(slot.triggers[0]).toBe(255);
      expect(slot.triggers[1]).toBe(0);
      expect(slot.hat[0]).toBe(90);
      expect(slot.buttons[0]).toBe(t <= 100_000 - 1 ? 1 << 4 : 0);
      read += 1;
    });
    expect(read).toBeGreaterThan(100);
    pad.hand.pressHat(null);
    pad.advance(520_000, (_, reportId, payload) => void decoder.read(reportId, payload, slot));
    expect(slot.hat[0]).toBeNaN();
  });
});
