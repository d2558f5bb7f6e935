/** While bytes are under way to a pad: the machine stays awake, and the window is not closed by accident. */
import { dialog, powerSaveBlocker, type BrowserWindow } from 'electron';
import type { Bench } from '../../bench/calls/bench-port.ts';

/** Returns the function that ends the guard. */
export function guardWriting(bench: Bench, window: BrowserWindow): () => void {
  /** Id of the block on sleep; null while nothing is written. */
  let awake: number | null = null;
  const writing = new Set<string>();
  const end = bench.listen('memory.state', (state) => {
    if (state.writing) writing.add(state.pad);
    else writing.delete(state.pad);
    if (writing.size > 0) awake ??= powerSaveBlocker.start('prevent-app-suspension');
    else if (awake !== null) {
      powerSaveBlocker.stop(awake);
      awake = null;
    }
  });
  window.on('close', (event) => {
    if (writing.size === 0) return;
    event.preventDefault();
    void dialog.showMessageBox(window, {
      type: 'warning',
      message: 'A pad is being written to.',
      detail:
        'Closing now could ruin the pad. Wait for the end, or end the session in the Memory view: it is then rolled back.',
    });
  });
  return end;
}
