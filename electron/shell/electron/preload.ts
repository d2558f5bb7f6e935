/** What the page is given of the main process: four functions by name, no channel, no event object. */
import { contextBridge, ipcRenderer } from 'electron';
import { failed } from '../../../core/result.ts';
import { isCallName, isEventName } from '../../../shared/names.ts';
import { CALL_CHANNEL, EVENT_CHANNEL, SAMPLES_CHANNEL, SAVE_CHANNEL } from './channels.ts';

type Hear = (payload: unknown) => void;

const hearers = new Map<string, Set<Hear>>();

ipcRenderer.on(EVENT_CHANNEL, (_event, name: unknown, payload: unknown) => {
  if (isEventName(name)) for (const hear of hearers.get(name) ?? []) hear(payload);
});

// Batches must not be copied through the bridge one by one: the page gets the port itself, through its own window.
ipcRenderer.on(SAMPLES_CHANNEL, (event) => {
  window.postMessage(SAMPLES_CHANNEL, '*', [...event.ports]);
});

contextBridge.exposeInMainWorld('bench', {
  call(name: unknown, request: unknown): Promise<unknown> {
    if (isCallName(name)) return ipcRenderer.invoke(CALL_CHANNEL, name, request);
    return Promise.resolve(failed('call-unknown', 'This call is not known to the bench.'));
  },
  listen(name: unknown, hear: Hear): () => void {
    if (!isEventName(name)) return () => undefined;
    const set = hearers.get(name) ?? new Set<Hear>();
    hearers.set(name, set.add(hear));
    return () => void set.delete(hear);
  },
  save(name: unknown, bytes: unknown): Promise<unknown> {
    return ipcRenderer.invoke(SAVE_CHANNEL, name, bytes);
  },
  /** The port for sample batches follows as a message of the window to itself. */
  openSamples(): Promise<void> {
    return ipcRenderer.invoke(SAMPLES_CHANNEL) as Promise<void>;
  },
});
