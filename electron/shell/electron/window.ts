/** The app's one window. */
import { BrowserWindow } from 'electron';
import path from 'node:path';
import { APP_ORIGIN } from './app-origin.ts';

export interface WindowSize {
  readonly width: number;
  readonly height: number;
}

/** Shown once the page has something to show; `keepSize` hears the size that it had when it was closed. */
export function openWindow(size: WindowSize, packaged: boolean, keepSize: (size: WindowSize) => void): BrowserWindow {
  const window = new BrowserWindow({
    width: size.width,
    height: size.height,
    minWidth: 800,
    minHeight: 600,
    show: false,
    title: 'Stickwright',
    webPreferences: {
      preload: path.join(import.meta.dirname, '../preload/preload.cjs'),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      spellcheck: false,
      devTools: !packaged,
    },
  });
  window.once('ready-to-show', () => window.show());
  window.on('close', () => {
    const [width = size.width, height = size.height] = window.getSize();
    keepSize({ width, height });
  });
  void window.loadURL(`${APP_ORIGIN}/`);
  return window;
}
