import { describe, it } from 'vitest';
import { cycleErrors } from '../../core/numeric/input-cycles.ts';
import { linearity } from '../../core/numeric/linearity.ts';
import { expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

const golden = readGolden('adc_linearity') as {
  linearity: {
    data: { x: number[]; y: number[] };
    terminalBased: { slope: number; intercept: number; maxDev: number };
    independent: { slope: number; intercept: number; maxDev: number };
    zeroBased: { slope: number; maxDev: number; continuousLimit: number };
  };
  hysteresis: {
    example: {
      span: number;
      up: number[][];
      down: number[][];
      expected: { hysteresisPctSpan: number; repeatabilityPctSpan: number };
    };
  };
};

describe('linearity', () => {
  const { data, terminalBased, independent, zeroBased } = golden.linearity;

  it('ISA-51.1, IEC 61298-2: terminal, independent and zero-based to 1e-9 (definitions from memory; constructed)', () => {
    const lines = { terminal: terminalBased, independent, zero: { ...zeroBased, intercept: 0 } };
    for (const line of ['terminal', 'independent', 'zero'] as const) {
      const found = linearity(data.x, data.y, line)!;
      expectWithin(found.slope, lines[line].slope, 1e-9);
      expectWithin(found.intercept, lines[line].intercept, 1e-9);
      expectWithin(found.deviation, lines[line].maxDev, 1e-9);
    }
  });

  it('zero-based: with more points it nears 0.04·(3 − 2√2) (closed form)', () => {
    const x = Array.from({ length: 10_001 }, (_, i) => i / 10_000);
    const y = x.map((at) => at + 0.04 * at * (1 - at));
    expectWithin(linearity(x, y, 'zero')!.deviation, zeroBased.continuousLimit, 1e-8);
  });
});

describe('hysteresis and repeatability', () => {
  it('43 CFR 3175.135: largest differences of three passes each way, in percent of span (seen; example constructed)', () => {
    const { span, up, down, expected } = golden.hysteresis.example;
    const found = cycleErrors({ ascending: up, descending: down })!;
    expectWithin((100 * found.hysteresis) / span, expected.hysteresisPctSpan, 1e-9);
    expectWithin((100 * found.repeatability) / span, expected.repeatabilityPctSpan, 1e-9);
  });
});
