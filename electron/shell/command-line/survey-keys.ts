/** What a person at the terminal says to a survey, one key or one line at a time. */
import { createInterface, emitKeypressEvents } from 'node:readline';

type Word = 'confirm' | 'repeat' | 'skip' | 'abort';

const KEYS: Readonly<Record<string, Word>> = {
  return: 'confirm',
  enter: 'confirm',
  space: 'confirm',
  r: 'repeat',
  s: 'skip',
  q: 'abort',
};

export const KEYS_TEXT =
  'Enter or space confirms · r repeats the last one · s skips this capture · q ends and keeps what was taken';

/** Returns what ends the listening. Keys are heard at once on a terminal, lines elsewhere. */
export function listenToKeys(say: (word: Word) => void): () => void {
  const input = process.stdin;
  if (!input.isTTY) {
    const lines = createInterface({ input });
    lines.on('line', (line) => {
      const word = KEYS[line.trim() === '' ? 'enter' : line.trim()];
      if (word !== undefined) say(word);
    });
    return () => {
      lines.close();
      input.unref();
    };
  }
  emitKeypressEvents(input);
  input.setRawMode(true);
  const hear = (_letters: string | undefined, key: { name?: string; ctrl?: boolean }): void => {
    const word = key.ctrl === true && key.name === 'c' ? 'abort' : KEYS[key.name ?? ''];
    if (word !== undefined) say(word);
  };
  input.on('keypress', hear);
  return () => {
    input.off('keypress', hear);
    input.setRawMode(false);
    input.pause();
  };
}
