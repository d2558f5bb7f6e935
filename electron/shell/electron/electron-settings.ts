/** Preferences through Electron's store: the same file in the same place as every other shell. */
import { ipcMain } from 'electron';
import ElectronStore from 'electron-store';
import { findPlaces } from '../../store/places.ts';
import { KeptSettings, type OpenPreferences } from '../../store/settings.ts';

export function electronSettings(): KeptSettings {
  return new KeptSettings(findPlaces().settings, openStore, () => new Date());
}

const openStore: OpenPreferences = (folder, name) => {
  const store = new ElectronStore({ cwd: folder, name });
  // It listens for windows that ask for its folder, synchronously and whoever they are; ours never ask.
  ipcMain.removeAllListeners('electron-store-get-data');
  return store;
};
