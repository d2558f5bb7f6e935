/**
 * What breaks in the shell is said and noted, never silent. Pads, surveys and writes live in the main process and go on:
 * only the window is loaded again, where that helps.
 */
import { app, dialog, type BrowserWindow } from 'electron';
import type { FaultLog } from '../../store/fault-log.ts';
import { wordsOf } from '../closing.ts';

/** A page that breaks again and again is not loaded for ever. */
const MOST_RELOADS = 3;
const FORGET_AFTER_MILLIS = 60_000;

export function watchHealth(window: BrowserWindow, faults: FaultLog, millis = () => performance.now()): void {
  const say = oneAtATime(window);
  let reloads: number[] = [];
  /** The user wants a page that hangs to be ended and loaded again. */
  let isWanted = false;
  window.webContents.on('render-process-gone', (_event, { reason, exitCode }) => {
    if (reason === 'clean-exit') return;
    if (isWanted) {
      isWanted = false;
      window.webContents.reload();
      return;
    }
    faults.note('window', `the page is gone: ${reason}, exit code ${exitCode}`);
    reloads = reloads.filter((at) => millis() - at < FORGET_AFTER_MILLIS);
    const again = reloads.length < MOST_RELOADS;
    if (again) {
      reloads.push(millis());
      window.webContents.reload();
    }
    say(
      again ? 'The window broke and was loaded again.' : 'The window breaks again and again.',
      again
        ? 'What was under way with the pad goes on.'
        : 'What was under way with the pad goes on. End it when it is over, and start the program again.',
    );
  });
  window.on('unresponsive', () => {
    faults.note('window', 'the page does not answer');
    void dialog
      .showMessageBox(window, {
        type: 'warning',
        message: 'The window does not answer.',
        detail: 'What is under way with the pad goes on. Wait, or load the window again.',
        buttons: ['Wait', 'Load the window again'],
        defaultId: 0,
        cancelId: 0,
      })
      .then(({ response }) => {
        if (response !== 1) return;
        // A page that hangs does not let go of its process by itself.
        isWanted = true;
        window.webContents.forcefullyCrashRenderer();
      });
  });
  app.on('child-process-gone', (_event, { type, reason, exitCode }) => {
    if (reason === 'clean-exit') return;
    faults.note('child process', `${type} is gone: ${reason}, exit code ${exitCode}`);
    say('A part of the program broke.', `It is called ${type}; start the program again if something is missing.`);
  });
  const uncaught = (thrown: unknown): void => {
    faults.note('main process', thrown);
    say(
      'The program met an error of its own.',
      `${wordsOf(thrown)}. What is under way goes on; end it when it is over, and start the program again.`,
    );
  };
  process.on('uncaughtException', uncaught);
  process.on('unhandledRejection', uncaught);
}

/** Faults can come in a row: while one is shown the others stand in the log alone. */
function oneAtATime(window: BrowserWindow): (message: string, detail: string) => void {
  let isShown = false;
  return (message, detail) => {
    console.error(`${message} ${detail}`);
    if (isShown || window.isDestroyed()) return;
    isShown = true;
    void dialog
      .showMessageBox(window, { type: 'error', message, detail: `${detail} The cause stands in faults.log.` })
      .finally(() => (isShown = false));
  };
}
