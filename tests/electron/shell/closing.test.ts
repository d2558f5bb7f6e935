import { describe, expect, it } from 'vitest';
import { done } from '../../../core/result.ts';
import { Closing, untilClosing } from '../../../electron/shell/closing.ts';

function closingOf(...steps: (() => Promise<void>)[]) {
  const world = { millis: 0, said: [] as string[], noted: [] as unknown[], exits: [] as number[] };
  let end: () => void = () => undefined;
  const ended = new Promise<void>((resolve) => (end = resolve));
  const closing = new Closing({
    steps,
    say: (line) => void world.said.push(line),
    note: (thrown) => void world.noted.push(thrown),
    exit: (code) => {
      world.exits.push(code);
      end();
    },
    millis: () => world.millis,
  });
  return { closing, world, ended };
}

describe('closing', () => {
  it('takes its steps one after the other and then exits, however many signals come', async () => {
    const order: string[] = [];
    let finish: () => void = () => undefined;
    const first = new Promise<void>((resolve) => (finish = resolve));
    const { closing, world, ended } = closingOf(
      () => first.then(() => void order.push('bench')),
      () => Promise.resolve(void order.push('server')),
    );
    expect(closing.isClosing).toBe(false);
    for (let count = 0; count < 5; count += 1) closing.signal();
    expect(closing.isClosing).toBe(true);
    expect(order).toEqual([]);
    expect(world.said).toHaveLength(4);
    expect(world.said[0]).toMatch(/^closing … /u);
    expect(world.exits).toEqual([]);
    finish();
    await ended;
    expect(order).toEqual(['bench', 'server']);
    expect(world.exits).toEqual([0]);
  });

  it('is cut off by a third signal after ten seconds, and not by a second', () => {
    const { closing, world } = closingOf(() => new Promise(() => undefined));
    closing.signal();
    world.millis = 60_000;
    closing.signal();
    expect(world.exits).toEqual([]);
    closing.signal();
    expect(world.exits).toEqual([1]);
  });

  it('notes and says an error that nobody caught, closes in order and exits with 1', async () => {
    let hasClosed = false;
    const { closing, world, ended } = closingOf(() => Promise.resolve(void (hasClosed = true)));
    const broken = new Error('this broke');
    closing.fault(broken);
    closing.fault('again');
    await ended;
    expect(hasClosed).toBe(true);
    expect(world.noted).toEqual([broken, 'again']);
    expect(world.said[0]).toBe('The program met an error of its own (this broke) and closes; start it again.');
    expect(world.exits).toEqual([1]);
  });

  it('goes on with the rest where a step fails', async () => {
    let hasClosed = false;
    const { closing, world, ended } = closingOf(
      () => Promise.reject(new Error('stuck')),
      () => Promise.resolve(void (hasClosed = true)),
    );
    closing.signal();
    await ended;
    expect(hasClosed).toBe(true);
    expect(world.said).toEqual(['A part of the closing failed (stuck); the rest goes on.']);
    expect(world.exits).toEqual([1]);
  });

  it('lets no call through any more', async () => {
    let isClosing = false;
    const router = untilClosing(
      { answer: () => Promise.resolve(done('yes')), events: () => () => undefined },
      () => isClosing,
    );
    expect(await router.answer('bench.hello', {})).toEqual(done('yes'));
    isClosing = true;
    expect(await router.answer('bench.hello', {})).toMatchObject({ ok: false, problem: { code: 'closing' } });
  });
});
