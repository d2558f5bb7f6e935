import { describe, expect, it } from 'vitest';
import { findPlaces } from '../../../electron/store/places.ts';

describe('the places where things are kept', () => {
  it('follow the XDG base directories on Linux, ignoring paths that are not absolute', () => {
    const home = '/home/me';
    expect(findPlaces({ platform: 'linux', env: {}, home })).toEqual({
      data: '/home/me/.local/share/stickwright',
      settings: '/home/me/.config/stickwright',
      vault: '/home/me/.local/share/stickwright/vault',
      locks: '/home/me/.local/share/stickwright/locks',
    });
    const env = { XDG_DATA_HOME: '/data', XDG_CONFIG_HOME: 'relative' };
    expect(findPlaces({ platform: 'linux', env, home })).toMatchObject({
      data: '/data/stickwright',
      settings: '/home/me/.config/stickwright',
    });
  });

  it('are the usual folders of applications elsewhere', () => {
    const mac = findPlaces({ platform: 'darwin', env: {}, home: '/Users/me' });
    expect(mac.data).toBe('/Users/me/Library/Application Support/stickwright');
    const env = { LOCALAPPDATA: String.raw`C:\Users\me\AppData\Local`, APPDATA: String.raw`D:\Roaming` };
    const windows = findPlaces({ platform: 'win32', env, home: String.raw`C:\Users\me` });
    expect(windows.data).toBe(String.raw`C:\Users\me\AppData\Local\stickwright`);
    expect(windows.settings.startsWith(String.raw`D:\Roaming\stickwright`)).toBe(true);
  });

  it('are all inside of one folder where it is given', () => {
    const env = { STICKWRIGHT_HOME: '/tmp/one', XDG_DATA_HOME: '/data' };
    const places = findPlaces({ platform: 'linux', env, home: '/home/me' });
    for (const place of Object.values(places)) expect(place).toMatch(/^\/tmp\/one(\/|$)/);
    expect(places.settings).not.toBe(places.data);
  });
});
