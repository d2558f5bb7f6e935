import { expect, test } from 'vitest';
import { eachFrame, paced } from '../../../../renderer/kit/page/each-frame.ts';

test('draws once a frame until it is ended', () => {
  const waiting = new Map<number, (millis: number) => void>();
  let handle = 0;
  const drawn: number[] = [];
  const clock = {
    requestAnimationFrame: (draw: (millis: number) => void) => {
      waiting.set((handle += 1), draw);
      return handle;
    },
    cancelAnimationFrame: (given: number) => void waiting.delete(given),
  };
  const repaint = (millis: number): void => {
    const draws = [...waiting.values()];
    waiting.clear();
    for (const draw of draws) draw(millis);
  };
  const end = eachFrame((millis) => drawn.push(millis), clock);
  repaint(16);
  repaint(33);
  end();
  repaint(50);
  expect(drawn).toEqual([16, 33]);
  expect(waiting.size).toBe(0);
});

test('lets a call through only when its pace allows', () => {
  const passed: number[] = [];
  const act = paced(100, (millis) => passed.push(millis));
  for (const millis of [0, 16, 99, 100, 150, 230]) act(millis);
  expect(passed).toEqual([0, 100, 230]);
});
