import { describe, expect, it } from 'vitest';
import { PadStream } from '../../../../electron/bench/pads/pad-stream.ts';
import { SampleFeed } from '../../../../electron/bench/pads/sample-feed.ts';
import { readSampleBatch } from '../../../../shared/sample-batch.ts';
import { FakeClock } from '../../../support/fake-clock.ts';

function read(batch: Uint8Array): unknown[] {
  const entries: unknown[] = [];
  readSampleBatch(batch, {
    report: (t, id, payload) => entries.push([t, id, ...payload]),
    gap: (t, lost) => entries.push([t, 'gap', lost]),
  });
  return entries;
}

describe('pad stream and sample feed', () => {
  it('shows a batch at most every 16 ms, with everything that came', () => {
    const clock = new FakeClock(0);
    const feed = new SampleFeed();
    const batches: unknown[][] = [];
    feed.listen(
      (batch) => batches.push(read(batch)),
      () => true,
    );
    const stream = new PadStream('p', clock, feed);
    for (let t = 0; t < 40; t += 1) {
      stream.report(clock.micros(), 1, Uint8Array.of(t));
      clock.pass(1);
    }
    clock.pass(100);
    expect(batches.map(({ length }) => length)).toEqual([16, 16, 8]);
    expect(batches.flat()).toHaveLength(40);
  });

  it('gathers nothing while nobody listens', () => {
    const clock = new FakeClock(0);
    const feed = new SampleFeed();
    const stream = new PadStream('p', clock, feed);
    stream.report(1, 1, Uint8Array.of(1));
    stream.gap(2, null);
    expect(clock.waiting).toBe(0);
    const batches: unknown[] = [];
    feed.listen(
      (batch) => batches.push(read(batch)),
      () => true,
    );
    stream.flush();
    expect(batches).toEqual([]);
  });

  it('leaves whole batches out for a listener that is not ready and says how many reports those were', () => {
    const clock = new FakeClock(0);
    const feed = new SampleFeed();
    let ready = true;
    const slow: unknown[][] = [];
    const quick: unknown[][] = [];
    feed.listen(
      (batch) => slow.push(read(batch)),
      () => ready,
    );
    const end = feed.listen(
      (batch) => quick.push(read(batch)),
      () => true,
    );
    const stream = new PadStream('p', clock, feed);
    const show = (value: number): void => {
      stream.report(clock.micros(), 1, Uint8Array.of(value));
      stream.report(clock.micros(), 1, Uint8Array.of(value));
      clock.pass(16);
    };
    show(1);
    ready = false;
    show(2);
    show(3);
    ready = true;
    show(4);
    end();
    show(5);
    expect(slow).toEqual([
      [
        [0, 1, 1],
        [0, 1, 1],
      ],
      [[48_000, 'gap', 4]],
      [
        [48_000, 1, 4],
        [48_000, 1, 4],
      ],
      [
        [64_000, 1, 5],
        [64_000, 1, 5],
      ],
    ]);
    expect(quick).toHaveLength(4);
  });
});
