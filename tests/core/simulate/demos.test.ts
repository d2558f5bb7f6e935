import { describe, expect, it } from 'vitest';
import { demoNames, findDemo } from '../../../core/simulate/demos.ts';
import { createSimulatedPad } from '../../../core/simulate/simulated-pad.ts';

describe('the demos', () => {
  it('are found by name, and an unknown name is answered with the names there are', () => {
    for (const name of demoNames) expect(findDemo(name)).toEqual({ ok: true, value: name });
    const found = findDemo('splendid');
    expect(found.ok).toBe(false);
    if (!found.ok) {
      expect(found.problem.code).toBe('demo-unknown');
      for (const name of demoNames) expect(found.problem.says).toContain(name);
    }
  });

  it('each have a product name of their own and a serial number by seed', () => {
    const products = demoNames.map((name) => createSimulatedPad(name, 1).identity.product);
    expect(new Set(products).size).toBe(demoNames.length);
    expect(createSimulatedPad('worn', 41).identity.serial).toBe('worn-41');
  });
});
