/** The Electron shell: one window over the bench, with everything that web content does not need denied. */
import { app, ipcMain, Menu, powerMonitor, protocol, session } from 'electron';
import path from 'node:path';
import { createRouter } from '../../bench/calls/router.ts';
import { openFaultLog } from '../../store/fault-log.ts';
import { findPlaces } from '../../store/places.ts';
import { KeptSettings } from '../../store/settings.ts';
import { assembleBench } from '../assemble-bench.ts';
import { hearSignals } from '../closing.ts';
import { answerAppRequest, APP_SCHEME } from './app-origin.ts';
import { routeIpc } from './ipc-router.ts';
import { lockContents, lockSession } from './lock-down.ts';
import { closeBeforeQuit } from './quitting.ts';
import { openSamplePort } from './sample-port.ts';
import { saveFile } from './save-file.ts';
import { watchHealth } from './watch-health.ts';
import { openWindowPreference } from './window-preference.ts';
import { openWindow } from './window.ts';
import { guardWriting } from './writing-guard.ts';

const PAGE_FOLDER = path.join(import.meta.dirname, '../renderer');

app.enableSandbox();
protocol.registerSchemesAsPrivileged([
  { scheme: APP_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);
Menu.setApplicationMenu(null);
app.on('web-contents-created', (_event, contents) => lockContents(contents));

// Two programs on one pad disturb each other: a second start shows the window of the first.
if (app.requestSingleInstanceLock()) void app.whenReady().then(start).catch(sayAndQuit);
else app.quit();

async function start(): Promise<void> {
  lockSession(session.defaultSession, app.isPackaged);
  protocol.handle(APP_SCHEME, (request) => answerAppRequest(PAGE_FOLDER, request));

  const settings = new KeptSettings(findPlaces().settings, () => new Date());
  const measureWorker = new URL('./measure-worker.js', import.meta.url);
  const bench = await assembleBench({ shell: 'electron', settings, measureWorker });
  const router = createRouter(bench, (problem) => console.error(problem.says));
  const size = await openWindowPreference(findPlaces().settings);
  const window = openWindow(size.read(), app.isPackaged, (now) => size.keep(now));
  const endEvents = routeIpc(ipcMain, window.webContents, router, {
    openSamples: () => openSamplePort(window.webContents, bench),
    save: (name, bytes) => saveFile(window, name, bytes),
  });
  watchHealth(window, openFaultLog(findPlaces().data));

  const endGuard = guardWriting(bench, window);
  powerMonitor.on('suspend', () => void bench.suspend());
  powerMonitor.on('resume', () => bench.resume());
  app.on('second-instance', () => {
    if (window.isDestroyed()) return;
    if (window.isMinimized()) window.restore();
    window.focus();
  });
  app.on('window-all-closed', () => app.quit());
  hearSignals(() => app.quit());
  closeBeforeQuit(async () => {
    endEvents();
    endGuard();
    await bench.close();
  });
}

function sayAndQuit(thrown: unknown): void {
  console.error(thrown instanceof Error ? thrown.message : thrown);
  app.exit(1);
}
