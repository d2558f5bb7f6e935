/** Sends sample batches to the window through a message port, as many at a time as the page has given credit for. */
import { MessageChannelMain, type MessagePortMain, type WebContents } from 'electron';
import type { Bench } from '../../bench/calls/bench-port.ts';
import { SAMPLES_CHANNEL } from './channels.ts';

/** Batches that may be under way; the page answers each one that it has taken. */
const CREDIT = 8;

/** The last port is kept here, for one that nothing holds is closed by garbage collection. */
let current: MessagePortMain | null = null;

export function openSamplePort(window: WebContents, bench: Bench): void {
  current?.close();
  const { port1, port2 } = new MessageChannelMain();
  let underway = 0;
  const end = bench.samples(
    (batch) => {
      underway += 1;
      port1.postMessage(batch);
    },
    () => underway < CREDIT,
  );
  port1.on('message', () => (underway = Math.max(0, underway - 1)));
  port1.on('close', end);
  port1.start();
  current = port1;
  window.postMessage(SAMPLES_CHANNEL, null, [port2]);
}
