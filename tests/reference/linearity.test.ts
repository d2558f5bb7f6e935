import { describe, expect, it } from 'vitest';
import { rampTransitions, sineTransitions, stepErrors } from '../../core/numeric/code-density.ts';
import { cycleErrors } from '../../core/numeric/input-cycles.ts';
import { linearity } from '../../core/numeric/linearity.ts';
import { expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

interface Ramp {
  readonly id: string;
  readonly provenance: string;
  readonly hits: number[];
  readonly edges?: { first_V: number; last_V: number };
  readonly lsb_V?: number;
  readonly avgInterior: number;
  readonly dnl: number[];
  readonly inlEndpointAtEdges: number[];
  readonly inlBestFitAtEdges?: number[];
}

const golden = readGolden('adc_linearity') as {
  ramp: Ramp[];
  sine4bitIdealProbabilities: number[];
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

function expectEach(found: readonly number[], expected: readonly number[], tolerance: number): void {
  expect(found).toHaveLength(expected.length);
  for (const [i, value] of expected.entries()) expectWithin(found[i], value, tolerance);
}

describe('code density under a ramp', () => {
  it.each(golden.ramp)('$id: widths and lines of the codes to 1e-9 ($provenance)', (ramp) => {
    const transitions = rampTransitions(ramp.hits);
    const errors = stepErrors(transitions)!;
    expectWithin((transitions.at(-1)! - transitions[0]!) / (transitions.length - 1), ramp.avgInterior, 1e-9);
    expectEach(errors.differential, ramp.dnl, 1e-9);
    expectEach(errors.integral, ramp.inlEndpointAtEdges, 1e-9);
    if (ramp.inlBestFitAtEdges !== undefined) expectEach(errors.integralFromBestLine, ramp.inlBestFitAtEdges, 1e-9);
  });

  it('a code without a hit has −1 exactly and is the one that is missing (constructed)', () => {
    const { hits } = golden.ramp.find(({ id }) => id === 'missing')!;
    const errors = stepErrors(rampTransitions(hits))!;
    expect(errors.differential[1]).toBe(-1);
    expect(errors.missing).toEqual([2]);
  });
});

describe('code density under a sine', () => {
  it('IEEE 1241: an ideal 4-bit converter has its transitions an eighth apart (from memory; computed)', () => {
    const transitions = sineTransitions(golden.sine4bitIdealProbabilities, 0, 1);
    expectEach(
      [...transitions],
      Array.from({ length: 15 }, (_, k) => -0.875 + k / 8),
      1e-12,
    );
    expectEach(stepErrors(transitions)!.differential, new Array<number>(14).fill(0), 1e-7);
  });
});

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
