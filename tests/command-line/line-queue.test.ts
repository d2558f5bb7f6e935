import { describe, expect, it } from 'vitest';
import { LineQueue } from '../../electron/shell/command-line/line-queue.ts';

/** A reader that takes one text, each time it is let. */
function slowReader() {
  const taken: string[] = [];
  let take: () => void = () => undefined;
  return {
    taken,
    let: () => take(),
    print: (text: string) =>
      new Promise<void>((resolve) => {
        taken.push(text);
        take = resolve;
      }),
  };
}

describe('lines for a reader that may be slow', () => {
  it('all come, in order, and what waits comes at once', async () => {
    const reader = slowReader();
    const queue = new LineQueue(reader.print);
    for (const line of ['a', 'b', 'c']) queue.push([line]);
    expect(reader.taken).toEqual(['a']);
    reader.let();
    await expect.poll(() => reader.taken).toEqual(['a', 'b\nc']);
    const ended = queue.end();
    reader.let();
    await ended;
    queue.push(['d']);
    expect(reader.taken).toEqual(['a', 'b\nc', 'd']);
    expect(queue.left).toBe(0);
  });

  it('are held up to a bound, and those beyond are counted', async () => {
    const reader = slowReader();
    const queue = new LineQueue(reader.print);
    queue.push(['first']);
    for (let n = 0; n < 10_500; n += 1) queue.push([String(n)]);
    expect(queue.left).toBe(500);
    reader.let();
    await expect.poll(() => reader.taken.length).toBe(2);
    expect(reader.taken[1]?.split('\n')).toHaveLength(10_000);
  });
});
