import { describe, expect, it } from 'vitest';
import { done, failed, type Problem } from '../../../../core/result.ts';
import { createRouter } from '../../../../electron/bench/calls/router.ts';
import { standInBench } from '../../shell/stand-in-bench.ts';

const summary = {
  pad: 'pad-1',
  identity: { vendorId: 1, productId: 2, product: 'Pad', serial: null, transport: 'usb' },
  open: false,
  problem: null,
  rule: null,
  unit: null,
};

describe('router', () => {
  it('passes a good request and its reply, without keys that the contract does not know', async () => {
    const bench = standInBench({ 'pads.list': () => done([{ ...summary, path: '/dev/hidraw0' }]) });
    const answer = await createRouter(bench, () => undefined).answer('pads.list', { more: 1 });
    expect(answer).toEqual({ ok: true, value: [summary] });
    expect(bench.asked).toEqual([{ name: 'pads.list', request: {} }]);
  });

  it('refuses an unknown call without asking the bench', async () => {
    const bench = standInBench();
    const router = createRouter(bench, () => undefined);
    for (const name of ['pads.destroy', 'toString', '', 7, null, undefined, {}])
      expect(await router.answer(name, {})).toMatchObject({ ok: false, problem: { code: 'call-unknown' } });
    expect(bench.asked).toEqual([]);
  });

  it('refuses a bad request and names the place', async () => {
    const bench = standInBench();
    const answer = await createRouter(bench, () => undefined).answer('pads.open', { pad: 5 });
    expect(answer).toMatchObject({ ok: false, problem: { code: 'request-invalid' } });
    expect((answer as { problem: Problem }).problem.says).toBe(
      'The request pads.open was refused: pad must be a string; correct it and try again.',
    );
    expect(bench.asked).toEqual([]);
  });

  it('passes a problem of the bench as it is', async () => {
    const bench = standInBench({ 'pads.open': () => failed('pad-busy', 'Busy; wait.') });
    const answer = await createRouter(bench, () => undefined).answer('pads.open', { pad: 'p' });
    expect(answer).toEqual({ ok: false, problem: { code: 'pad-busy', says: 'Busy; wait.' } });
  });

  it('turns an exception and a reply outside of the contract into problems and tells them', async () => {
    const faults: Problem[] = [];
    const bench = standInBench({
      'pads.demos': () => {
        throw new Error('spring broke');
      },
      'pads.list': () => done([{ ...summary, open: 'yes' }]),
    });
    const router = createRouter(bench, (problem) => faults.push(problem));
    expect(await router.answer('pads.demos', {})).toMatchObject({ ok: false, problem: { code: 'bench-fault' } });
    expect(await router.answer('pads.list', {})).toMatchObject({ ok: false, problem: { code: 'bench-fault' } });
    expect(faults.map(({ says }) => says)).toEqual([
      expect.stringContaining('spring broke'),
      expect.stringContaining('[0].open must be a boolean'),
    ]);
  });

  it('tells events that keep to the contract, tells faults of the others, and ends when asked', () => {
    const faults: Problem[] = [];
    const heard: unknown[] = [];
    const bench = standInBench();
    const end = createRouter(bench, (problem) => faults.push(problem)).events((...event) => heard.push(event));
    bench.tell('pads.changed', [summary]);
    bench.tell('pads.changed', [{}]);
    end();
    bench.tell('pads.changed', []);
    expect(heard).toEqual([['pads.changed', [summary]]]);
    expect(faults).toHaveLength(1);
  });
});
