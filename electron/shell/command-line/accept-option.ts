/** `--accept WORD`, once for each thing that a plan asks by itself. */
import { InvalidArgumentError, Option } from 'commander';
import { askCodes, type AskCode } from '../../../core/image/ask.ts';

export function acceptOption(words: readonly AskCode[] = askCodes): Option {
  return new Option(`--accept <word>`, `what was asked by itself: ${words.join(', ')}; may be repeated`).argParser(
    (word: string, before: readonly AskCode[] | undefined): readonly AskCode[] => {
      const known = words.find((one) => one === word);
      if (known === undefined) throw new InvalidArgumentError(`It must be one of ${words.join(', ')}.`);
      return [...(before ?? []), known];
    },
  );
}
