/** How large the window was, kept by Electron's own store: a preference of this shell alone, whose loss costs nothing. */
import { ipcMain } from 'electron';
import { z } from 'zod';
import type { WindowSize } from './window.ts';

/** Pixels: less cannot be worked in, more shows on no screen. */
const side = z.number().min(400).max(16_384);
const sizeSchema = z.object({ width: side, height: side });

const USUAL: WindowSize = { width: 1280, height: 860 };

export interface WindowPreference {
  /** The usual size where none was kept, or one that no screen could show. */
  read(): WindowSize;
  keep(size: WindowSize): void;
}

/** In `window.json` of the folder; one that cannot be read is begun anew. */
export async function openWindowPreference(folder: string): Promise<WindowPreference> {
  // Loaded where there is a window: what it brings along answers signals, which a second start leaves to the system.
  const { default: ElectronStore } = await import('electron-store');
  const store = new ElectronStore({ cwd: folder, name: 'window', clearInvalidConfig: true });
  // It listens for windows that ask for its folder, synchronously and whoever they are; ours never ask.
  ipcMain.removeAllListeners('electron-store-get-data');
  return {
    read() {
      const kept = sizeSchema.safeParse(store.store);
      return kept.success ? kept.data : USUAL;
    },
    keep(size) {
      try {
        store.store = { ...size };
      } catch (thrown) {
        const words = thrown instanceof Error ? thrown.message : String(thrown);
        console.error(`The size of the window could not be kept (${words}).`);
      }
    },
  };
}
