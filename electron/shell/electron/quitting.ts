/** Lets the bench close before the program ends: a pad that is still being read can take the process down with it. */
import { app } from 'electron';

export function closeBeforeQuit(close: () => Promise<void>): void {
  let state: 'open' | 'closing' | 'closed' = 'open';
  app.on('before-quit', (event) => {
    if (state === 'closed') return;
    event.preventDefault();
    if (state === 'closing') return;
    state = 'closing';
    void close().finally(() => {
      state = 'closed';
      app.quit();
    });
  });
}
