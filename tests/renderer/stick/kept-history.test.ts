import { describe, expect, it } from 'vitest';
import { NO_HISTORY, takeStep, type NudgeHistory } from '../../../core/mapping/nudge-history.ts';
import type { OwnMapping } from '../../../renderer/stick/origin.ts';
import { OverReload, type ReloadStore } from '../../../renderer/stick/over-reload.ts';
import { mapping, memoryStore } from '../support/bench-stick.ts';

function long(steps: number): NudgeHistory<OwnMapping> {
  let history: NudgeHistory<OwnMapping> = NO_HISTORY;
  for (let step = 1; step <= steps; step += 1)
    history = takeStep(history, { ...mapping, x: { ...mapping.x, max: 2001 + step }, taken: null });
  return history;
}

/** A store that takes texts up to a length, as a browser's quota does. */
function smallStore(most: number): ReloadStore {
  const store = memoryStore();
  return {
    getItem: (key) => store.getItem(key),
    setItem(key, value) {
      if (value.length > most) throw new DOMException('full', 'QuotaExceededError');
      store.setItem(key, value);
    },
  };
}

describe('a history kept for a reload', () => {
  it('comes back as it was', () => {
    const overReload = new OverReload(memoryStore());
    expect(overReload.keepHistory('s1', 'left', long(30))).toBe(true);
    expect(overReload.history('s1', 'left')).toEqual(long(30));
    expect(overReload.history('s1', 'right')).toBe(NO_HISTORY);
  });

  it('keeps the newest steps where the store has no room for all', () => {
    const overReload = new OverReload(smallStore(20_000));
    expect(overReload.keepHistory('s1', 'left', long(2000))).toBe(true);
    const again = overReload.history('s1', 'left');
    expect(again.present?.x.max).toBe(4001);
    expect(again.past?.mapping?.x.max).toBe(4000);
  });

  it('says so where the store has no room at all', () => {
    expect(new OverReload(smallStore(10)).keepHistory('s1', 'left', long(5))).toBe(false);
  });

  it.each([
    ['nothing', ''],
    ['no JSON', '{'],
    ['another shape', '{"at":0,"rows":[[1,2]]}'],
    ['crossed edges', '{"at":0,"rows":[[9,5,1,1,2,3]]}'],
  ])('is none where the store holds %s', (_, text) => {
    const store = memoryStore();
    store.setItem('yours s1 left', text);
    expect(new OverReload(store).history('s1', 'left')).toBe(NO_HISTORY);
  });
});

describe('a wish kept for a reload', () => {
  it('comes back for its survey alone; what is no wish is none', () => {
    const store = memoryStore();
    const wish = { aim: 'even', centreBy: 'mean', guard: 0.025 } as const;
    new OverReload(store).keepWish('s1', wish);
    expect(new OverReload(store).wish('s1')).toEqual(wish);
    expect(new OverReload(store).wish('s2')).toBeNull();
    for (const text of ['{', '{"aim":"best"}', 'null']) {
      store.setItem('wish s1', text);
      expect(new OverReload(store).wish('s1')).toBeNull();
    }
  });
});
