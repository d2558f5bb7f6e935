import { describe, expect, it } from 'vitest';
import { failed } from '../../../../core/result.ts';
import { KnownPads } from '../../../../electron/bench/pads/known-pads.ts';
import type { PadSource, PadWatcher } from '../../../../electron/bench/pads/pad-source.ts';
import { FakeClock } from '../../../support/fake-clock.ts';
import { ScriptedTransport, sourceOf } from '../scripted-transport.ts';

class PlayedWatcher implements PadWatcher {
  tell: (pads: readonly PadSource[]) => void = () => undefined;
  start(hear: (pads: readonly PadSource[]) => void): void {
    this.tell = hear;
  }
  pause(): void {}
  resume(): void {}
  close(): Promise<void> {
    return Promise.resolve();
  }
}

function setUp() {
  const open = new Set<string>();
  let changes = 0;
  const registry = new KnownPads(
    (name, key) =>
      name === 'no-such'
        ? failed('demo-unknown', 'No such demo.')
        : { ok: true, value: sourceOf(new ScriptedTransport(`${name}-${key}`)) },
    { isOpen: (pad) => open.has(pad), isInHand: () => false, unitOf: () => null },
    () => (changes += 1),
  );
  const products = (): string[] => registry.list().map(({ identity }) => identity.product);
  return { registry, open, products, changes: () => changes, clock: new FakeClock(0), watcher: new PlayedWatcher() };
}

describe('pad registry', () => {
  it('plugs the healthy simulated pad in where no real one is there', () => {
    const { registry, watcher, clock, products } = setUp();
    registry.watch(watcher, clock);
    expect(products()).toEqual([]);
    watcher.tell([]);
    expect(products()).toEqual(['Scripted healthy-demo-0']);
  });

  it('does not wait for a system that lists nothing', () => {
    const { registry, watcher, clock, products } = setUp();
    registry.watch(watcher, clock);
    clock.pass(1000);
    expect(products()).toEqual(['Scripted healthy-demo-0']);
  });

  it('takes it out again when a real pad comes, unless it is open', () => {
    const { registry, watcher, clock, products, open } = setUp();
    registry.watch(watcher, clock);
    watcher.tell([]);
    open.add('pad-1');
    watcher.tell([sourceOf(new ScriptedTransport('real'))]);
    expect(products()).toEqual(['Scripted real', 'Scripted healthy-demo-0']);
    open.clear();
    watcher.tell([sourceOf(new ScriptedTransport('real'))]);
    expect(products()).toEqual(['Scripted real']);
    watcher.tell([]);
    expect(products()).toEqual(['Scripted healthy-demo-0']);
  });

  it('gives a pad that comes back the handle it had, and no handle says where it is', () => {
    const { registry, watcher, clock } = setUp();
    registry.watch(watcher, clock);
    const [a, b] = [sourceOf(new ScriptedTransport('/dev/hidraw0')), sourceOf(new ScriptedTransport('/dev/hidraw1'))];
    watcher.tell([a, b]);
    const first = registry.list().map(({ pad }) => pad);
    watcher.tell([b]);
    watcher.tell([b, a]);
    expect(registry.list().map(({ pad }) => pad)).toEqual(first.toReversed());
    expect(first.join()).not.toMatch(/dev|hidraw/u);
    expect(registry.find(first[0] ?? '')).toMatchObject({ ok: true, value: a });
  });

  it('answers for a pad that left with one sentence', () => {
    const { registry } = setUp();
    expect(registry.find('pad-9')).toMatchObject({ ok: false, problem: { code: 'pad-gone' } });
  });

  it('plugs further simulated pads in, up to a limit', () => {
    const { registry, products, changes } = setUp();
    expect(registry.plug('no-such')).toMatchObject({ ok: false, problem: { code: 'demo-unknown' } });
    for (let more = 0; more < 16; more += 1) expect(registry.plug('worn').ok).toBe(true);
    expect(registry.plug('worn')).toMatchObject({ ok: false, problem: { code: 'demo-too-many' } });
    expect(new Set(products()).size).toBe(16);
    expect(changes()).toBe(16);
  });
});
