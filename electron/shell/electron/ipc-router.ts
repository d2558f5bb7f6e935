/** The one listener of the main process: checks who asks, then lets the contract's router check what is asked. */
import type { IpcMain, IpcMainInvokeEvent, WebContents } from 'electron';
import { failed } from '../../../core/result.ts';
import type { Router } from '../../bench/router.ts';
import { isAppUrl } from './app-origin.ts';
import { CALL_CHANNEL, EVENT_CHANNEL, SAMPLES_CHANNEL } from './channels.ts';

/** `openSamples` hands the window a port. Returns the function that ends the passing of events. */
export function routeIpc(ipc: IpcMain, window: WebContents, router: Router, openSamples: () => void): () => void {
  ipc.handle(CALL_CHANNEL, (event, name: unknown, request: unknown) =>
    isOwn(event, window)
      ? router.answer(name, request)
      : failed('sender-refused', 'Only the app’s own window is answered.'),
  );
  ipc.handle(SAMPLES_CHANNEL, (event) => {
    if (isOwn(event, window)) openSamples();
  });
  return router.events((name, payload) => {
    if (!window.isDestroyed()) window.send(EVENT_CHANNEL, name, payload);
  });
}

/** The top frame of the app's own window, showing the app's own origin. */
function isOwn(event: IpcMainInvokeEvent, window: WebContents): boolean {
  const frame = event.senderFrame;
  return event.sender.id === window.id && frame !== null && frame.parent === null && isAppUrl(frame.url);
}
