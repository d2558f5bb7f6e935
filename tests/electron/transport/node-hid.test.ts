import { describe, expect, it } from 'vitest';
import { loadHid } from '../../../electron/transport/node-hid.ts';

type Library = Awaited<ReturnType<NonNullable<Parameters<typeof loadHid>[0]>>>;

function failing(words: string): Library {
  return {
    getHidapiVersion: () => {
      throw new Error(words);
    },
  } as unknown as Library;
}

describe('loading the HID library', () => {
  it('names the system package that is missing, whether the import or the first call says so', async () => {
    const words = 'libusb-1.0.so.0: cannot open shared object file: No such file or directory';
    for (const load of [() => Promise.reject(new Error(words)), () => Promise.resolve(failing(words))]) {
      const loaded = await loadHid(load);
      expect(loaded.ok ? null : loaded.problem.code).toBe('hid-missing');
      expect(loaded.ok ? '' : loaded.problem.says).toContain('libusb-1.0-0');
    }
  });

  it('says what else kept it from loading', async () => {
    const loaded = await loadHid(() => Promise.resolve(failing('no native build for this machine')));
    expect(loaded.ok ? '' : loaded.problem.says).toContain('no native build for this machine');
  });

  it('lists devices and opens them without taking them away from other programs', async () => {
    const asked: unknown[] = [];
    const library = {
      getHidapiVersion: () => '0.15.0',
      devicesAsync: () => Promise.resolve([]),
      HIDAsync: {
        open: (...given: unknown[]) => {
          asked.push(given);
          return Promise.reject(new Error('none'));
        },
      },
    } as unknown as Library;
    const loaded = await loadHid(() => Promise.resolve(library));
    expect(loaded.ok).toBe(true);
    if (!loaded.ok) return;
    expect(await loaded.value.devices()).toEqual([]);
    await expect(loaded.value.open('/dev/hidraw7')).rejects.toThrow('none');
    expect(asked).toEqual([['/dev/hidraw7', { nonExclusive: true }]]);
  });
});
