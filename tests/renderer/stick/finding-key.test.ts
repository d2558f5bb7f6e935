import { expect, test } from 'vitest';
import { findByKey, findingKey, findingsOf } from '../../../renderer/stick/finding-key.ts';
import { makeFinding } from '../findings/make-finding.ts';

const list = [
  makeFinding({ id: 'worn-track', says: 'first' }),
  makeFinding({ id: 'overshoot' }),
  makeFinding({ id: 'worn-track', says: 'second' }),
];

test('a key is the id, numbered from the second of its kind on, and finds its finding again', () => {
  expect(list.map((_, index) => findingKey(list, index))).toEqual(['worn-track', 'overshoot', 'worn-track.2']);
  expect(findByKey(list, 'worn-track.2')?.says).toBe('second');
});

test('an unknown key and none find nothing', () => {
  expect([findByKey(list, 'worn-track.3'), findByKey(list, null)]).toEqual([null, null]);
});

test('a stick’s findings are its own and those of the whole pad, in their order', () => {
  const all = [makeFinding({ stick: 'right' }), makeFinding({ stick: null, id: 'late-reports' }), makeFinding()];
  expect(findingsOf(all, 'left').map(({ id }) => id)).toEqual(['late-reports', 'seat-not-flat']);
});
