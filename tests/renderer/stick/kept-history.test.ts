import { describe, expect, it } from 'vitest';
import { NO_HISTORY, takeStep } from '../../../core/mapping/nudge-history.ts';
import { readHistory, writeHistory, type HistoryStore } from '../../../renderer/stick/kept-history.ts';
import { mapping, memoryStore } from '../support/bench-stick.ts';

function long(steps: number) {
  let history = NO_HISTORY;
  for (let step = 1; step <= steps; step += 1)
    history = takeStep(history, { ...mapping, x: { ...mapping.x, max: 2001 + step } });
  return history;
}

/** A store that takes texts up to a length, as a browser's quota does. */
function smallStore(most: number): HistoryStore {
  const store = memoryStore();
  return {
    getItem: (key) => store.getItem(key),
    setItem(key, value) {
      if (value.length > most) throw new DOMException('full', 'QuotaExceededError');
      store.setItem(key, value);
    },
  };
}

describe('a history kept as text', () => {
  it('comes back as it was', () => {
    const store = memoryStore();
    expect(writeHistory(store, 'k', long(30))).toBe(true);
    expect(readHistory(store, 'k')).toEqual(long(30));
  });

  it('keeps the newest steps where the store has no room for all', () => {
    const store = smallStore(20_000);
    expect(writeHistory(store, 'k', long(2000))).toBe(true);
    const again = readHistory(store, 'k');
    expect(again.present?.x.max).toBe(4001);
    expect(again.past?.mapping?.x.max).toBe(4000);
  });

  it('says so where the store has no room at all', () => {
    expect(writeHistory(smallStore(10), 'k', long(5))).toBe(false);
  });

  it.each([
    ['nothing', ''],
    ['no JSON', '{'],
    ['another shape', '{"at":0,"rows":[[1,2]]}'],
    ['crossed edges', '{"at":0,"rows":[[9,5,1,1,2,3]]}'],
  ])('is none where the store holds %s', (_, text) => {
    const store = memoryStore();
    store.setItem('k', text);
    expect(readHistory(store, 'k')).toBe(NO_HISTORY);
  });
});
