import { expect, test } from 'vitest';
import { ScreenScale } from '../../../../renderer/kit/theme/screen-scale.svelte.ts';

test('pictures grow with the theme’s text when the window does', () => {
  const scale = new ScreenScale();
  let text = '13px';
  let resized = (): void => {};
  scale.follow({ textSize: () => text, addEventListener: (_event, hear) => (resized = hear) });
  expect(scale.now).toBe(1);
  text = '26px';
  resized();
  expect(scale.now).toBe(2);
});

test('without a text size nothing is scaled', () => {
  const scale = new ScreenScale();
  scale.follow({ textSize: () => '', addEventListener: () => {} });
  expect(scale.now).toBe(1);
});
