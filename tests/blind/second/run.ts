/**
 * The second blind test: sticks, hands and wires written without knowledge of how they are judged. `node tests/blind/second/run.ts`
 * with --units N (each cell), --only NAME (cells whose name begins so: a fault, `sound`, `slip`), --pad KIND (several times), --seed N,
 * --write FOLDER (logs for a look), --json FILE (a line a draw).
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { cellsOf } from './cells.ts';
import type { Judged } from './judge-draw.ts';
import { padKinds, type PadKind } from './pad-plan.ts';
import { Pool } from './pool.ts';
import { sayCell, sayReasons } from './say-cell.ts';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    units: { type: 'string', default: '20' },
    only: { type: 'string', multiple: true, default: [''] },
    pad: { type: 'string', multiple: true, default: ['sensor12', 'reported8', 'reported16'] },
    write: { type: 'string' },
    json: { type: 'string' },
  },
});
const unknown = values.pad.filter((name) => !padKinds.some((kind) => kind === name));
if (unknown.length > 0) throw new Error(`There is no pad ${unknown.join(', ')}; there are ${padKinds.join(', ')}.`);
const pads = padKinds.filter((kind: PadKind) => values.pad.includes(kind));
const cells = cellsOf(Number(values.seed), Number(values.units), pads).filter(({ name }) =>
  values.only.some((only) => name.startsWith(only)),
);
const pool = new Pool(values.write ?? null);
const from = performance.now();
const all: Judged[] = [];
for (const cell of cells) {
  const judged = await pool.judge(cell.wishes);
  all.push(...judged);
  console.log(sayCell(cell, judged));
}
await pool.close();
for (const group of ['sound', 'slip'] as const) {
  const judged = all.filter(({ wish }) => wish.fault === null && (wish.slip !== null) === (group === 'slip'));
  if (judged.length === 0) continue;
  console.log(`\nWhy, of all ${judged.length} ${group === 'sound' ? 'sound sticks' : 'surveys with a slip'}:`);
  for (const line of sayReasons(judged)) console.log(`  ${line}`);
}
if (values.json !== undefined) writeFileSync(values.json, all.map((one) => `${JSON.stringify(one)}\n`).join(''));
console.log(`seed ${values.seed}, ${all.length} draws, ${Math.round((performance.now() - from) / 1000)} s`);
