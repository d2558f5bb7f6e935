/** Published values kept in tests/golden/reference, each file with its sources; the caller says what shape it expects. */
import { readFileSync } from 'node:fs';
import path from 'node:path';

export function readGolden(name: string): unknown {
  const file = path.join(import.meta.dirname, '../golden/reference', `${name}.json`);
  return JSON.parse(readFileSync(file, 'utf8')) as unknown;
}
