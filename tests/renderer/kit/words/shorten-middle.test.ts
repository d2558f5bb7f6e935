import { expect, test } from 'vitest';
import { shortenMiddle } from '../../../../renderer/kit/words/shorten-middle.ts';

test('a text that fits stays as it is', () => {
  expect(shortenMiddle('Bench pad', 9)).toBe('Bench pad');
});

test('a longer one loses its middle and never grows beyond what fits', () => {
  expect(shortenMiddle('Bench pad, worn track', 13)).toBe('Bench…track');
  for (let most = 3; most < 22; most += 1)
    expect(shortenMiddle('Bench pad, worn track', most).length).toBeLessThanOrEqual(most);
});

test('letters outside the basic plane are not cut in two', () => {
  expect(shortenMiddle('𝑥𝑥𝑥𝑥𝑥𝑥', 3)).toBe('𝑥…𝑥');
});
