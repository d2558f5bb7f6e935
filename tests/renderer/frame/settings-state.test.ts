import { describe, expect, test } from 'vitest';
import { chainOf } from '../../../core/zones/one-zone.ts';
import { done, failed } from '../../../core/result.ts';
import { SettingsState, type Settings } from '../../../renderer/frame/settings-state.svelte.ts';
import { scriptedBench } from '../support/scripted-bench.ts';

const kept: Settings = {
  theme: 'system',
  sound: true,
  speech: false,
  confirmButton: null,
  limits: {},
  mappings: [],
  chain: chainOf({ shape: 'radial', inner: 0.08, outer: 1 }),
  driver: null,
  consumers: [],
};

describe('the settings', () => {
  test('are read once and followed', async () => {
    const bench = scriptedBench({ 'settings.read': () => done(kept) });
    const settings = new SettingsState(bench);
    await settings.follow();
    expect(settings.values).toEqual(kept);
    bench.tell('settings.changed', { ...kept, speech: true });
    expect(settings.values?.speech).toBe(true);
  });

  test('a change shows at once, before the bench has answered', async () => {
    const bench = scriptedBench({
      'settings.read': () => done(kept),
      'settings.write': (part) => done({ ...kept, theme: part.theme ?? kept.theme }),
    });
    const settings = new SettingsState(bench);
    await settings.follow();
    const written = settings.change({ theme: 'dark' });
    expect(settings.values?.theme).toBe('dark');
    await written;
    expect(settings.values?.theme).toBe('dark');
  });

  test('a write that is refused is told and undone', async () => {
    const bench = scriptedBench({
      'settings.read': () => done(kept),
      'settings.write': () => failed('disk-full', 'The disk is full; free some space.'),
    });
    const settings = new SettingsState(bench);
    await settings.follow();
    await settings.change({ sound: false });
    expect(settings.values?.sound).toBe(true);
    expect(settings.problem?.code).toBe('disk-full');
  });
});
