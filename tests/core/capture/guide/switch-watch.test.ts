import { expect, test } from 'vitest';
import { BOUNCE_WINDOW_US, SwitchWatch } from '../../../../core/capture/guide/switch-watch.ts';

function after(edges: readonly (readonly [number, boolean])[]): SwitchWatch {
  const watch = new SwitchWatch();
  for (const [t, down] of edges) watch.take(t, down);
  return watch;
}

test('is pressed when it went down and released only once it came up again', () => {
  expect(after([[0, true]])).toMatchObject({ pressed: true, released: false, down: true });
  expect(
    after([
      [0, true],
      [100_000, false],
    ]),
  ).toMatchObject({ pressed: true, released: true, down: false });
});

test('a clean contact has a bounce of 0, one that was never moved has none', () => {
  expect(new SwitchWatch().bounceUs).toBeNull();
  expect(
    after([
      [0, true],
      [100_000, false],
    ]).bounceUs,
  ).toBe(0);
});

test('the bounce of a press is the time from its first to its last edge', () => {
  const watch = after([
    [0, true],
    [2000, false],
    [5000, true],
    [400_000, false],
  ]);
  expect(watch.bounceUs).toBe(5000);
});

test('a tap, however short, is no bounce until the contact closes again', () => {
  const tap = [
    [0, true],
    [14_000, false],
  ] as const;
  expect(after(tap).bounceUs).toBe(0);
  expect(after([...tap, [20_000, true]]).bounceUs).toBe(20_000);
});

test('the longest bounce is kept, and two presses further apart than the window are no bounce', () => {
  const watch = after([
    [0, true],
    [4000, false],
    [7000, true],
    [200_000, false],
    [200_000 + BOUNCE_WINDOW_US + 1, true],
  ]);
  expect(watch.bounceUs).toBe(7000);
});

test('a reading that changes nothing is told to be nothing', () => {
  const watch = new SwitchWatch();
  expect(watch.take(0, false)).toBe(false);
  expect(watch.take(1, true)).toBe(true);
  expect(watch.take(2, true)).toBe(false);
});
