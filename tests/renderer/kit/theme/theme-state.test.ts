import { expect, test } from 'vitest';
import { Theme, type ThemePlace } from '../../../../renderer/kit/theme/theme-state.svelte.ts';

function place(dark: boolean): ThemePlace & { turn(dark: boolean): void; readonly dataset: DOMStringMap } {
  const hearers: (() => void)[] = [];
  const dataset: DOMStringMap = {};
  const query = { matches: dark, addEventListener: (_event: 'change', hear: () => void) => void hearers.push(hear) };
  return {
    matchMedia: () => query,
    document: { documentElement: { dataset } },
    dataset,
    turn: (to) => {
      query.matches = to;
      for (const hear of hearers) hear();
    },
  };
}

test('follows the system until light or dark is chosen', () => {
  const theme = new Theme();
  const window = place(true);
  theme.follow(window);
  expect(window.dataset['theme']).toBe('dark');
  window.turn(false);
  expect(window.dataset['theme']).toBe('light');
  theme.choice = 'dark';
  window.turn(false);
  expect(window.dataset['theme']).toBe('dark');
  theme.choice = 'system';
  expect(theme.shown).toBe('light');
});
