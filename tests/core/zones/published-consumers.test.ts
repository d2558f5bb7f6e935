/** Each rule of the starting set, as a consumer file, against check points computed from the published formulas. */
import { describe, expect, it } from 'vitest';
import { parseConsumer } from '../../../core/zones/parse-consumer.ts';
import { startingConsumers } from '../../../core/zones/published-consumers.ts';
import { compileChain } from '../../../core/zones/run-chain.ts';

function outputOf(name: string, control: 'left' | 'right' | 'trigger', x: number, y = 0): [number, number] {
  const consumer = startingConsumers.find((one) => one.name === name);
  const out = new Float64Array(2);
  compileChain(consumer?.chains[control] ?? { stages: [{ minimumOutput: Number.NaN }] })(x, y, out);
  return [out[0] ?? Number.NaN, out[1] ?? Number.NaN];
}

describe('the starting set of consumers', () => {
  it.each(startingConsumers.map((one) => [one.name, one] as const))('reads back as a consumer file: %s', (_, one) => {
    expect(parseConsumer(structuredClone(one))).toEqual({ ok: true, value: one });
  });

  it('names the document of every rule but the made-up ones, and no two alike', () => {
    for (const { name, source } of startingConsumers)
      expect(source === null ? name : source).toMatch(source === null ? /^Made-up example/u : /.{15,}/u);
    expect(new Set(startingConsumers.map(({ name }) => name)).size).toBe(startingConsumers.length);
  });

  // Win32 API documentation, Getting started with XInput: (m − dead zone)/(32,767 − dead zone); trigger threshold 30 of 255.
  it.each([
    ['left', 16384 / 32767, (16384 - 7849) / (32767 - 7849)],
    ['left', 7849 / 32767, 0],
    ['right', 8689 / 32767, 0],
    ['right', 1, 1],
    ['trigger', 30 / 255, 0],
    ['trigger', 31 / 255, 1 / 225],
  ] as const)('gives what the Win32 page states for the %s at %f', (control, at, out) => {
    expect(outputOf('Desktop gamepad interface, thumbs, rescaled disc', control, at)[0]).toBeCloseTo(out, 12);
  });

  // Unity Input System source, StickDeadzoneProcessor: (m − 0.125)/(0.925 − 0.125), beyond 0.925 a unit vector.
  it('gives what the disc of an engine states', () => {
    const [x, y] = outputOf('Engine input system, whole stick, disc', 'left', -0.3, 0.2);
    expect(x).toBeCloseTo(-0.244992, 6);
    expect(y).toBeCloseTo(0.163328, 6);
    expect(outputOf('Engine input system, whole stick, disc', 'right', 0.95)[0]).toBeCloseTo(1, 12);
  });
});
