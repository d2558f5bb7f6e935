/** Lists that take a while are told in order, whatever order they would have come in. */
import { expect, it } from 'vitest';
import { tellLatest } from '../../../../electron/bench/calls/tell-latest.ts';

interface Listing {
  readonly come: (list: string) => void;
  readonly fail: (why: Error) => void;
}

/** Listings that end when the test says so. */
function byHand() {
  const begun: Listing[] = [];
  const told: string[] = [];
  const list = () => new Promise<string>((come, fail) => begun.push({ come, fail }));
  return { begun, told, tell: tellLatest(list, (one) => told.push(one)) };
}

const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

it('begins no second listing beside the first, and tells the last alone', async () => {
  const { begun, told, tell } = byHand();
  const calls = [tell(), tell(), tell()];
  await turn();
  expect(begun).toHaveLength(1);
  begun[0]?.come('older');
  await turn();
  expect([begun.length, told]).toEqual([2, []]);
  begun[1]?.come('newer');
  expect(await Promise.all(calls)).toEqual(['newer', 'newer', 'newer']);
  expect(told).toEqual(['newer']);
});

it('never tells an older list after a newer one, though their reads would end in reverse', async () => {
  const told: number[] = [];
  let state = 0;
  let wait = 40;
  const list = async (): Promise<number> => {
    const seen = state;
    // Each read is faster than the one before it.
    await new Promise((resolve) => setTimeout(resolve, (wait -= 10)));
    return seen;
  };
  const tell = tellLatest(list, (one) => told.push(one));
  const calls = [1, 2, 3].map((now) => {
    state = now;
    return tell();
  });
  expect(await Promise.all(calls)).toEqual([3, 3, 3]);
  expect(told).toEqual([3]);
});

it('rejects who waits for a listing that failed, and goes on with the next', async () => {
  const { begun, told, tell } = byHand();
  const [first, second] = [tell(), tell()];
  begun[0]?.fail(new Error('The folder is gone.'));
  await expect(first).rejects.toThrow('The folder is gone.');
  begun[1]?.come('whole');
  expect(await second).toBe('whole');
  const third = tell();
  begun[2]?.come('later');
  expect(await third).toBe('later');
  expect(told).toEqual(['whole', 'later']);
});
