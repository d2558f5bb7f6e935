// @vitest-environment happy-dom
import { createRawSnippet, type Component } from 'svelte';
import { expect, test } from 'vitest';
import type { Table as Rows } from '../../../../renderer/kit/figures/table.ts';
import Table from '../../../../renderer/kit/parts/Table.svelte';
import { showPart } from '../../support/show-part.ts';

const table: Rows = {
  caption: 'Reach',
  heads: [
    { says: 'measure', spoken: true },
    { says: 'now', tone: 'now' },
    { says: 'from', words: true, title: 'where' },
  ],
  rows: [
    [{ says: 'reach', definition: 'how far' }, { says: '0.9', beside: 'at 45°' }, 'gate'],
    ['rest', { value: 0.5, drawn: '50 %' }, 'dwells'],
  ],
  selected: 1,
};
/** With as many of its props as a test needs. */
const Shown = Table as unknown as Component<Record<string, unknown>>;
const says = (text: string) => (row: () => number) => ({ render: () => `<i>${text} ${String(row())}</i>` });

const textOf = (element: Element | undefined): string => element?.textContent.replaceAll(/\s+/gu, ' ').trim() ?? '';

test('a table is drawn with its caption, its heads as they are heard, and a head for each row', () => {
  const shown = showPart(Shown, () => undefined, { table });
  expect(shown.querySelector('caption')?.textContent).toBe('Reach');
  const heads = [...shown.querySelectorAll('thead th')];
  expect(heads.map(textOf)).toEqual(['measure', 'now', 'from']);
  expect(heads[0]?.querySelector('.spoken-only')?.textContent).toBe('measure');
  expect(heads[2]?.getAttribute('title')).toBe('where');
  const rows = [...shown.querySelectorAll('tbody tr')].map((row) => [...row.children].map(textOf));
  expect(rows).toEqual([
    ['reachhow far', '0.9at 45°', 'gate'],
    ['rest', '50 %', 'dwells'],
  ]);
  expect(shown.querySelector('tbody th button')?.getAttribute('title')).toBe('how far');
  expect(shown.querySelectorAll('tbody th[scope="row"]')).toHaveLength(2);
  expect([...shown.querySelectorAll('td')].map((cell) => cell.classList.contains('now'))).toEqual([
    true,
    false,
    true,
    false,
  ]);
  expect([...shown.querySelectorAll('tr')].map((row) => row.getAttribute('aria-current'))).toEqual([
    null,
    null,
    'true',
  ]);
});

test('who shows it draws cells and what can be done, and says which rows stand out', () => {
  const shown = showPart(Shown, () => undefined, {
    table,
    cells: { 2: createRawSnippet(says('cell')) },
    actions: createRawSnippet(says('do')),
    marked: (row: number) => row === 0,
    strong: (row: number) => row === 1,
  });
  expect(textOf([...shown.querySelectorAll('thead th')].at(-1))).toBe('what to do');
  const rows = [...shown.querySelectorAll('tbody tr')];
  expect(rows.map((row) => [...row.children].slice(1).map(textOf))).toEqual([
    ['0.9at 45°', 'cell 0', 'do 0'],
    ['50 %', 'cell 1', 'do 1'],
  ]);
  expect(rows.map((row) => row.getAttribute('aria-current'))).toEqual(['true', null]);
  expect(rows.map((row) => row.classList.contains('strong'))).toEqual([false, true]);
  const named = showPart(Shown, () => undefined, { table, actions: createRawSnippet(says('do')), does: 'confirm as' });
  expect(named.querySelector('thead th:last-child .spoken-only')).toBeNull();
  expect(textOf([...named.querySelectorAll('thead th')].at(-1))).toBe('confirm as');
});

test('columns keep to what their heads say; heads that are only heard are not seen', () => {
  const heads: Rows['heads'] = [
    { says: 'at', spoken: true },
    { says: 'bytes', spoken: true, words: true, near: true, most: '24em', wraps: 'anywhere' },
    { says: 'up', spoken: true, width: '18%', current: true, definition: 'where to' },
  ];
  const rows = [['0x10', 'ab', '3 of 4']];
  const shown = showPart(Shown, () => undefined, { table: { ...table, heads, rows, selected: null }, divided: 0 });
  expect(shown.querySelector('thead')?.classList.contains('spoken-only')).toBe(true);
  const [, bytes, up] = shown.querySelectorAll<HTMLElement>('tbody tr > *');
  expect(bytes?.style.maxWidth).toBe('24em');
  expect([...(bytes?.classList ?? [])]).toEqual(expect.arrayContaining(['words', 'near', 'wraps', 'anywhere', 'cut']));
  expect(['current', 'cut', 'wraps'].map((name) => up?.classList.contains(name))).toEqual([true, false, false]);
  expect([...shown.querySelectorAll<HTMLElement>('col')].map(({ style }) => style.width)).toEqual(['', '', '18%']);
  expect(shown.querySelector('thead button')?.getAttribute('title')).toBe('where to');
  expect(shown.querySelector('tbody tr')?.classList.contains('divided')).toBe(true);
  expect(shown.querySelector('tbody tr')?.hasAttribute('aria-current')).toBe(false);
});
