import { describe, expect, it } from 'vitest';
import { parseConsumer } from '../../../core/zones/parse-consumer.ts';

const good = {
  kind: 'stickwright-consumer',
  version: 1,
  name: 'bench game',
  takes: 'driver',
  chains: { left: { stages: [{ zone: 'radial', inner: 0.1 }] } },
};

describe('parseConsumer', () => {
  it('reads a consumer; what may be missing is null', () => {
    const read = parseConsumer({ ...good, note: 'passed over' });
    expect(read).toEqual({ ok: true, value: { ...good, needs: null, source: null } });
  });

  it.each([
    [{ ...good, takes: 'both' }, 'takes must be "pad" or "driver"'],
    [{ ...good, version: 2 }, 'version must be 1'],
    [{ ...good, needs: 0 }, 'needs is 0, it must be more than 0'],
    [{ ...good, chains: { left: { stages: [{ zone: 'hexagon' }] } } }, 'Stage 1 of the chain for the left stick'],
    [{ ...good, chains: { trigger: { stages: [{ minimumOutput: 2 }] } } }, 'Stage 1 of the chain for a trigger'],
    [null, 'The consumer file'],
  ])('refuses a bad one by name and place', (value, says) => {
    const read = parseConsumer(value);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problem.says).toContain(says);
  });
});
