import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import equal from './equal.json' with { type: 'json' };

const root = path.resolve(import.meta.dirname, '../..');

interface Equal {
  readonly file: string;
  /** The line that is changed, without its indent; `from` stands in it or begins in it. */
  readonly line: string;
  readonly from: string;
  readonly to: string;
  /** Why no input can tell the two apart. */
  readonly why: string;
}

it('lists only changes of lines that are still there, each with the reason why it makes no difference', () => {
  for (const { file, line, from, to, why } of equal as readonly Equal[]) {
    const place = path.join(root, file);
    const lines = existsSync(place) ? readFileSync(place, 'utf8').split('\n') : [];
    expect(lines.map((one) => one.trim())).toContain(line);
    expect(from).not.toBe(to);
    expect(why).toMatch(/^[A-Z`].*\.$/);
  }
});
