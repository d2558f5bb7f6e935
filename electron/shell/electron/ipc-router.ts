/** The one listener of the main process: checks who asks, then lets the contract's router check what is asked. */
import type { IpcMain, IpcMainInvokeEvent, WebContents } from 'electron';
import { failed, type Result } from '../../../core/result.ts';
import type { Router } from '../../bench/calls/router.ts';
import { isAppUrl } from './app-origin.ts';
import { CALL_CHANNEL, EVENT_CHANNEL, SAMPLES_CHANNEL, SAVE_CHANNEL } from './channels.ts';

export interface WindowPorts {
  /** Hands the window a port for sample batches. */
  readonly openSamples: () => void;
  /** Saves a file of the page's; checks what it is given. */
  readonly save: (name: unknown, bytes: unknown) => Promise<Result<unknown>>;
}

/** Returns the function that ends the passing of events. */
export function routeIpc(ipc: IpcMain, window: WebContents, router: Router, ports: WindowPorts): () => void {
  ipc.handle(CALL_CHANNEL, (event, name: unknown, request: unknown) =>
    isOwn(event, window) ? router.answer(name, request) : senderRefused(),
  );
  ipc.handle(SAVE_CHANNEL, (event, name: unknown, bytes: unknown) =>
    isOwn(event, window) ? ports.save(name, bytes) : senderRefused(),
  );
  ipc.handle(SAMPLES_CHANNEL, (event) => {
    if (isOwn(event, window)) ports.openSamples();
  });
  return router.events((name, payload) => {
    if (!window.isDestroyed()) window.send(EVENT_CHANNEL, name, payload);
  });
}

function senderRefused(): ReturnType<typeof failed> {
  return failed('sender-refused', 'Only the app’s own window is answered.');
}

/** The top frame of the app's own window, showing the app's own origin. */
function isOwn(event: IpcMainInvokeEvent, window: WebContents): boolean {
  const frame = event.senderFrame;
  return event.sender.id === window.id && frame !== null && frame.parent === null && isAppUrl(frame.url);
}
